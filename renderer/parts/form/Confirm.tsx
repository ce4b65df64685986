/** A dialog, only for what cannot be undone. The safe answer has the focus. */
import type { ReactNode } from 'react';
import { Button, Dialog, DialogTrigger, Heading, Modal, ModalOverlay } from 'react-aria-components';
import './form.css';

export function Confirm(props: {
  readonly ask: string;
  readonly title: string;
  readonly body: string;
  /** What she may choose before she says yes. */
  readonly more?: ReactNode;
  readonly yes: string;
  readonly no: string;
  readonly onYes: () => void;
}) {
  return (
    <DialogTrigger>
      <Button className="link">{props.ask}</Button>
      <ModalOverlay className="confirm-ground" isDismissable>
        <Modal className="confirm">
          <Dialog role="alertdialog">
            {({ close }) => (
              <>
                <Heading slot="title">{props.title}</Heading>
                <p>{props.body}</p>
                {props.more}
                <div className="confirm-answers">
                  <Button className="button" autoFocus onPress={close}>
                    {props.no}
                  </Button>
                  <Button
                    className="button"
                    onPress={() => {
                      close();
                      props.onYes();
                    }}
                  >
                    {props.yes}
                  </Button>
                </div>
              </>
            )}
          </Dialog>
        </Modal>
      </ModalOverlay>
    </DialogTrigger>
  );
}
