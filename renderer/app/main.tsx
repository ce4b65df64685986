import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import './fonts.css';
import './tokens.css';
import './base.css';
import './shell.css';
import { onChanged } from '../data/host.ts';
import { invalidate } from '../data/query.ts';
import { Shell } from './Shell.tsx';

onChanged((tags) => void invalidate(tags));

const root = document.getElementById('window');
if (root !== null) {
  createRoot(root).render(
    <StrictMode>
      <Shell />
    </StrictMode>,
  );
}
