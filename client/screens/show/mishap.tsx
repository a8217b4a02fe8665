import { Component, type ReactNode } from 'react';

interface MishapProps {
  readonly children: ReactNode;
}

interface MishapState {
  readonly message: string | undefined;
}

/** Where a page cannot be drawn (a record that no version of ours wrote), a sentence stands in its place. */
export class Mishap extends Component<MishapProps, MishapState> {
  override state: MishapState = { message: undefined };

  static getDerivedStateFromError(error: unknown): MishapState {
    return { message: error instanceof Error ? error.message : String(error) };
  }

  override render(): ReactNode {
    const { message } = this.state;
    if (message === undefined) return this.props.children;
    return (
      <main className="start">
        <h1>Readback</h1>
        <p className="notice" role="alert">
          This cannot be shown ({message}): load the page again. What is written in the record stays as it is.
        </p>
      </main>
    );
  }
}
