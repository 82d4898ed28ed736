import { Component, type ReactNode } from "react";

interface GuardProps {
  readonly broken: (error: unknown) => void;
  readonly children: ReactNode;
}

/** Takes a fault in the drawing to where it is told in plain words; ink would show the place in the program. */
export class Guard extends Component<GuardProps, { readonly isBroken: boolean }> {
  override state = { isBroken: false };

  static getDerivedStateFromError(): { readonly isBroken: boolean } {
    return { isBroken: true };
  }

  override componentDidCatch(error: unknown): void {
    this.props.broken(error);
  }

  override render(): ReactNode {
    return this.state.isBroken ? null : this.props.children;
  }
}
