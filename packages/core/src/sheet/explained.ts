import { exact, type Feed, type Figure, worked as workedOut } from "../figure/figure.ts";

/** A worked figure with every figure that it rests on, so that its working can be followed to the end. */
export interface Explained extends Figure {
  /** Each once, leaves first. */
  readonly restsOn: readonly Figure[];
}

/** Makes a figure as `worked` of the figures does, and keeps with it what it rests on. */
export function worked(parts: Parameters<typeof workedOut>[0]): Explained {
  return { ...workedOut(parts), restsOn: everyFigure(Object.values(parts.from).flatMap(figuresOf)) };
}

/**
 * Lists figures and all that they rest on, each once, leaves first.
 *
 * @throws {RangeError} where two figures of different values have one id: a bug.
 */
export function everyFigure(figures: readonly Figure[]): readonly Figure[] {
  const all = new Map<string, Figure>();
  const keep = (figure: Figure): void => {
    const known = all.get(figure.id);
    if (known === undefined) all.set(figure.id, figure);
    else if (!exact(known).eq(exact(figure))) {
      throw new RangeError(`two figures are called ${figure.id}: ${known.value} and ${figure.value}`);
    }
  };
  for (const figure of figures) {
    if (!isExplained(figure)) keep(figure);
    else {
      const { restsOn, ...bare } = figure;
      for (const one of restsOn) keep(one);
      keep(bare);
    }
  }
  return [...all.values()];
}

function isExplained(figure: Figure): figure is Explained {
  return "restsOn" in figure;
}

function figuresOf(feed: Feed): readonly Figure[] {
  if (Array.isArray(feed)) return feed;
  return typeof feed === "object" && "working" in feed ? [feed] : [];
}
