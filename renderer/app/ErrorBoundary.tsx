import { Component, type ReactNode } from 'react';
import { words } from '../state/words.ts';

/** A page that cannot be drawn says so and leaves the margin in reach; another page starts afresh. */
export class ErrorBoundary extends Component<{ at: string; children: ReactNode }, { failedAt: string | null }> {
  override state: { failedAt: string | null } = { failedAt: null };

  static getDerivedStateFromError(): { failedAt: string } {
    return { failedAt: '' };
  }

  override componentDidCatch(): void {
    this.setState({ failedAt: this.props.at });
  }

  override componentDidUpdate(previous: { at: string }): void {
    if (previous.at !== this.props.at && this.state.failedAt !== null) this.setState({ failedAt: null });
  }

  override render(): ReactNode {
    if (this.state.failedAt === null) return this.props.children;
    return (
      <div role="alert">
        <header className="title">
          <h1>{words.app.broken}</h1>
        </header>
        <p className="line">{words.app.brokenMore}</p>
        <p>
          <button type="button" className="button" onClick={() => window.location.reload()}>
            {words.app.loadAgain}
          </button>
        </p>
      </div>
    );
  }
}
