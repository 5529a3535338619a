import type { ReactNode } from 'react';
import { Component } from 'react';

/** Catches what should not have happened, and shows another screen until `again` brings back, anew, what was there. */
export class CrashCatcher extends Component<
  { readonly screen: (again: () => void) => ReactNode; readonly children: ReactNode },
  { readonly hasCrashed: boolean }
> {
  override state = { hasCrashed: false };

  static getDerivedStateFromError(): { readonly hasCrashed: boolean } {
    return { hasCrashed: true };
  }

  override render(): ReactNode {
    if (!this.state.hasCrashed) return this.props.children;
    return this.props.screen(() => {
      this.setState({ hasCrashed: false });
    });
  }
}
