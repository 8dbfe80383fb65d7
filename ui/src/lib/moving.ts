// Something is dragged and the trade is asked where it comes to lie: at most one question a frame and one under way, and
// the last place asked for is always the last one answered.
type Frame = (go: () => void) => void;

export class Moving<Target, Answer> {
  #wanted: Target | null = null;
  #isUnderWay = false;
  #isDue = false;

  constructor(
    private readonly ask: (target: Target) => Promise<Answer>,
    private readonly take: (answer: Answer) => void,
    private readonly refuse: (thrown: unknown) => void,
    private readonly frame: Frame = (go) => void requestAnimationFrame(go),
  ) {}

  /** Whether an answer is still to come. */
  get isBusy(): boolean {
    return this.#isDue || this.#isUnderWay;
  }

  /** Wants to be there; an older wish that was not asked yet is forgotten. */
  to(target: Target): void {
    this.#wanted = target;
    this.#soon();
  }

  #soon(): void {
    if (this.#isUnderWay || this.#isDue) return;
    this.#isDue = true;
    this.frame(() => {
      this.#isDue = false;
      void this.#go();
    });
  }

  async #go(): Promise<void> {
    const target = this.#wanted;
    if (target === null) return;
    this.#wanted = null;
    this.#isUnderWay = true;
    try {
      const answer = await this.ask(target);
      this.take(answer);
    } catch (thrown) {
      this.refuse(thrown);
    } finally {
      this.#isUnderWay = false;
      if (this.#wanted !== null) this.#soon();
    }
  }
}
