import { Component, type ComponentChildren } from 'preact';

interface Props {
  /** What is drawn inside. When it is another one, the inside is tried again. */
  of: unknown;
  /** Shown in its place when the inside broke; `again` tries it once more. */
  otherwise: (error: unknown, again: () => void) => ComponentChildren;
  children: ComponentChildren;
}

interface State {
  of?: unknown;
  broke?: { readonly error: unknown } | null;
}

/** Keeps what breaks while it is drawn to its own place on the screen: the rest of the page stays as it is. */
export class Boundary extends Component<Props, State> {
  static override getDerivedStateFromProps({ of }: Props, state: State): State | null {
    return Object.is(of, state.of) ? null : { of, broke: null };
  }

  static override getDerivedStateFromError(error: unknown): State {
    return { broke: { error } };
  }

  /** The whole of it, with its place in the program, for whoever looks into the console. */
  override componentDidCatch(error: unknown): void {
    console.error(error);
  }

  private readonly again = () => this.setState({ broke: null });

  override render({ otherwise, children }: Props, { broke }: State) {
    return broke ? otherwise(broke.error, this.again) : children;
  }
}
