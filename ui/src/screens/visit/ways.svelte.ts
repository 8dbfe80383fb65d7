// Which of the ways to go on is taken: what was touched, or else the one that is advised, or the first that can be taken.

interface Way {
  choice: string;
  is_advised: boolean;
  can_be_chosen: boolean;
}

/** The way that is taken of those that the panel shows. */
export class Taken<T extends Way> {
  #touched = $state<string | null>(null);

  constructor(private readonly ways: () => T[]) {}

  get choice(): string {
    const advised = this.ways().find((way) => way.is_advised) ?? this.ways().find((way) => way.can_be_chosen);
    return this.#touched ?? advised?.choice ?? '';
  }

  set choice(choice: string) {
    this.#touched = choice;
  }

  get way(): T | undefined {
    return this.ways().find((way) => way.choice === this.choice);
  }
}
