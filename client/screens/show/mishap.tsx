import { Component, type ReactNode } from 'react';
import { PAGE } from '../../words/pages/page-words.ts';

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
        <h1>{PAGE.program}</h1>
        <p className="notice" role="alert">
          {PAGE.mishap(message)}
        </p>
      </main>
    );
  }
}
