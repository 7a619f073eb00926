import { type Decimal, type DecimalInput, type DecimalText, dec, decimalText, maybeDec } from "../number/decimal.ts";
import { type Expression, type FunctionName, type Operator, parseExpression } from "./expression.ts";
import { exact, type Fed, type Figure, feedsOf, restingOn, workedOut } from "./figure.ts";
import { frozen } from "./frozen.ts";
import { figureIn, type Graph } from "./graph.ts";
import { answer, type Note, note, type Outcome, type Problem, problem, refuse } from "./problem.ts";
import { said } from "./said.ts";
import { fromChange } from "./source.ts";

/**
 * The graph worked out again with other inputs, exactly. What a procedure found keeps its value, and so does what does not
 * rest on a changed figure; a changed figure says so. The shape stays too: how many loads are listed, which ingredients there
 * are. Of the limits of a spec none is checked but the ones below: who needs them changes the spec and asks anew.
 *
 * Notes: `figure.found-before` names what a procedure found from values that are no longer so; what follows from it is as old.
 * The graph keeps what those values were, so that another change of it tells of them again.
 * Problems: `figure.unknown`; `figure.worked-out`, since what is worked out follows from what it rests on; `figure.no-number`
 * for what is no number, or one of more than 30 digits or 15 places either way; `figure.impossible` below zero
 * (temperatures: below -273.15 °C), above 100 % and for parts of what is counted, unless the figure was so before, and where a
 * rest would be less than nothing or a whole more than all; `figure.no-value` where a formula has no value.
 *
 * @param changes - new values by id, of figures that were given or found
 * @example recalculated(graphOf([worked({ id: "b", label: "b", unit: "", places: 0 }, "2 * a", { a: given({ id: "a", label: "a", unit: "", places: 0 }, 3, "the spec") })]), { a: "5" }).value.b.value // => "10"
 */
export function recalculated(graph: Graph, changes: Readonly<Record<string, DecimalInput>>): Outcome<Graph> {
  const problems = Object.entries(changes).flatMap(([id, value]): readonly Problem[] => {
    const figure = Object.hasOwn(graph, id) ? graph[id] : undefined;
    if (figure === undefined) return [problem("figure.unknown", [id], { id })];
    return figure.working.kind === "formula"
      ? [problem("figure.worked-out", [id], { id, inputs: feedsOf(figure) })]
      : valueProblems(figure, value);
  });
  if (problems.length > 0) return refuse(...problems);
  const again = reckoned(graph, changes);
  if (!again.ok) return frozen(again);
  const beyond = impossible(graph, again.value);
  return frozen(beyond.length > 0 ? refuse(...beyond) : answer(again.value, foundBefore(again.value)));
}

/** Places from the point to the first digit that a change may have, and digits: as many as a result has. */
const mostPlaces = 15;
const mostDigits = 30;
/** Units of which a value may be below zero, and what is least there. */
const leastOf: Readonly<Record<string, DecimalText | undefined>> = { "°C": "-273.15", K: undefined };

function valueProblems(figure: Figure, input: DecimalInput): readonly Problem[] {
  const { id, unit, places } = figure;
  const value = maybeDec(input);
  if (value === undefined || value.precision() > mostDigits || Math.abs(value.e) > mostPlaces) {
    const written = value === undefined && typeof input !== "string" ? said(input) : String(input);
    const most = { places: String(mostPlaces), digits: String(mostDigits) };
    return [problem("figure.no-number", [id], { id, value: written.slice(0, 40), ...most })];
  }
  const least = Object.hasOwn(leastOf, unit) ? leastOf[unit] : "0";
  const bounds = { ...(least !== undefined && { least }), ...(unit === "%" && { most: "100" }), ...figure.bounds };
  // What has neither a unit nor places is counted.
  return beyondProblems({ ...figure, bounds }, value, unit === "" && places === 0);
}

/** A value that a figure cannot have, unless the figure was so before. */
function beyondProblems(figure: Figure, value: Decimal, whole = false): readonly Problem[] {
  const { id, unit, bounds = {} } = figure;
  const isBeyond = (one: Decimal): boolean =>
    one.lt(bounds.least ?? one) || one.gt(bounds.most ?? one) || (whole && !one.isInteger());
  if (!isBeyond(value) || isBeyond(exact(figure))) return [];
  return [problem("figure.impossible", [id], { id, value: decimalText(value), unit, ...bounds, whole })];
}

/** What follows from a change, and cannot be. */
function impossible(graph: Graph, again: Graph): readonly Problem[] {
  return Object.values(graph).flatMap((figure) => {
    const after = again[figure.id];
    return figure.bounds === undefined || after === undefined ? [] : beyondProblems(figure, exact(after));
  });
}

/** What procedures found from values that are no longer so. */
function foundBefore(graph: Graph): readonly Note[] {
  const old = new Set<string>();
  for (const figure of inOrder(graph)) {
    const { working } = figure;
    const changed = working.kind === "procedure" && working.at !== undefined;
    if (changed || isElsewhere(figure, graph) || feedsOf(figure).some((id) => old.has(id))) old.add(figure.id);
  }
  const ids = Object.keys(graph).filter((id) => {
    const figure = old.has(id) ? graph[id] : undefined;
    return figure?.working.kind === "procedure" || (figure !== undefined && isElsewhere(figure, graph));
  });
  return ids.length === 0 ? [] : [note("figure.found-before", [], { ids, labels: labelsOf(ids, graph) })];
}

/** What figures are called, each once; the division of a scale goes with what it weighs. */
function labelsOf(ids: readonly string[], graph: Graph): readonly string[] {
  const named = ids.filter((id) => !id.endsWith(".division"));
  return [...new Set((named.length > 0 ? named : ids).map((id) => figureIn(id, graph).label))];
}

/** Whether a figure is beyond those within which its way of working stands. */
function isElsewhere(figure: Figure, graph: Graph): boolean {
  const { least, most } = figure.stands ?? {};
  const beyond = (id: string | undefined, side: "lt" | "gt"): boolean =>
    id !== undefined && Object.hasOwn(graph, id) && exact(figure)[side](exact(figureIn(id, graph)));
  return beyond(least, "lt") || beyond(most, "gt");
}

/** The figures of a graph, what a figure rests on before it, whatever the order of their names is. */
function inOrder(graph: Graph): readonly Figure[] {
  const reached = new Set<string>();
  const ordered: Figure[] = [];
  const reach = (id: string): void => {
    const figure = reached.has(id) || !Object.hasOwn(graph, id) ? undefined : graph[id];
    if (figure === undefined) return;
    reached.add(id);
    feedsOf(figure).forEach(reach);
    ordered.push(figure);
  };
  Object.keys(graph).forEach(reach);
  return ordered;
}

/**
 * The same for figures of any kind: one that is worked out may be set as well, and what it rests on stays.
 *
 * @throws {RangeError} as `recalculated`, and on an id that the graph does not know.
 */
export function changedGraph(graph: Graph, changes: Readonly<Record<string, DecimalInput>>): Graph {
  for (const id of Object.keys(changes)) figureIn(id, graph);
  const again = reckoned(graph, changes);
  if (!again.ok) throw new RangeError("a formula of the graph has no value with these changes");
  return again.value;
}

function reckoned(graph: Graph, changes: Readonly<Record<string, DecimalInput>>): Outcome<Graph> {
  const fresh = new Map<string, Figure>();
  const numberOf = (id: string): Decimal => exact(fresh.get(id) ?? figureIn(id, graph));
  for (const figure of inOrder(graph)) {
    const { id, working } = figure;
    const change = Object.hasOwn(changes, id) ? changes[id] : undefined;
    if (change !== undefined) {
      const value = decimalText(dec(change));
      if (working.kind !== "given" || value !== figure.value) fresh.set(id, changedTo(figure, value));
    } else if (feedsOf(figure).some((feed) => fresh.has(feed))) {
      try {
        fresh.set(id, followed(figure, numberOf, graph));
      } catch (error) {
        if (!(error instanceof RangeError) || working.kind !== "formula") throw error;
        return refuse(problem("figure.no-value", [id], { id, formula: working.formula, inputs: feedsOf(figure) }));
      }
    }
  }
  return answer(Object.fromEntries(Object.entries(graph).map(([id, figure]) => [id, fresh.get(id) ?? figure])));
}

function changedTo(figure: Figure, value: DecimalText): Figure {
  return { ...rangeless(figure), value, working: { kind: "given", by: "a change" }, sources: [fromChange] };
}

/** A figure after a change of what went into it. */
function followed(figure: Figure, numberOf: (id: string) => Decimal, before: Graph): Figure {
  const { working } = figure;
  if (working.kind === "formula") {
    return { ...rangeless(figure), value: workedOut(working.formula, working.from, numberOf) };
  }
  if (working.kind === "given" || working.on === undefined) return figure;
  const { at = working.on.map((id) => figureIn(id, before).value), ...found } = working;
  const isSo = working.on.every((id, index) => numberOf(id).eq(at[index] ?? 0));
  return { ...figure, working: isSo ? found : { ...found, at } };
}

/**
 * Figures of a graph worked out on other figures in place of some of its own, each under the name of a scope; what does not
 * rest on any of those is the figure of the graph.
 *
 * @param instead - what stands in, by the id of what it stands for
 * @throws {RangeError} as `changedGraph`
 * @example workedAnew(graphOf([worked({ id: "b", label: "b", unit: "", places: 0 }, "2 * a", { a: given({ id: "a", label: "a", unit: "", places: 0 }, 3, "the spec") })]), new Map([["a", given({ id: "c", label: "c", unit: "", places: 0 }, 5, "the scale")]]), "weighed")("b").value // => "10"
 */
export function workedAnew(graph: Graph, instead: ReadonlyMap<string, Figure>, scope: string): (id: string) => Figure {
  const known = new Map(instead);
  const anew = (id: string): Figure => {
    const before = known.get(id);
    if (before !== undefined) return before;
    const figure = figureIn(id, graph);
    const fed = figure.working.kind === "formula" && feedsOf(figure).some((feed) => anew(feed) !== graph[feed]);
    const fresh = fed ? reworked(figure) : figure;
    known.set(id, fresh);
    return fresh;
  };
  const reworked = (figure: Figure): Figure => {
    const { working } = figure;
    const numberOf = (id: string): Decimal => exact(anew(id));
    const value = working.kind === "formula" ? workedOut(working.formula, working.from, numberOf) : figure.value;
    return { ...rangeless(restingOn(figure, anew)), id: `${scope}.${figure.id}`, value };
  };
  return anew;
}

/** A figure whose range no longer holds. */
function rangeless(figure: Figure): Figure {
  const { range: _range, ...rest } = figure;
  return rest;
}

/** Some figures of a graph as a function of others, in binary doubles: for questions asked thousands of times. */
export interface FastGraph {
  /** The outputs for values of the inputs, in their orders. */
  readonly valuesAt: (inputs: readonly number[]) => readonly number[];
  /** What each output changes by for each unit that an input changes, one list an output. */
  readonly slopesAt: (inputs: readonly number[]) => readonly (readonly number[])[];
}

type Step = { readonly operation: Operator | FunctionName; readonly left: number; readonly right: number };

/**
 * Turns the part of a graph between some inputs and some outputs into a list of steps on doubles. Good to some twelve
 * digits; what a person is shown comes from `recalculated`.
 *
 * @throws {RangeError} on an id that the graph does not know: a bug of the caller.
 */
export function fastGraph(graph: Graph, inputs: readonly string[], outputs: readonly string[]): FastGraph {
  const tape = new Tape(inputs.length);
  const places = new Map(inputs.map((id, index) => [figureIn(id, graph).id, index]));
  const placeOf = (id: string): number => {
    const known = places.get(id);
    if (known !== undefined) return known;
    const figure = figureIn(id, graph);
    const rests = figure.working.kind === "formula" && feedsOf(figure).some((feed) => placeOf(feed) >= 0);
    const place = rests && figure.working.kind === "formula" ? formulaPlace(figure.working) : -1;
    places.set(id, place);
    return place;
  };
  /** Where a figure stands; one that rests on no input is a constant. */
  const slotOf = (id: string): number => {
    const place = placeOf(id);
    return place >= 0 ? place : tape.constant(exact(figureIn(id, graph)).toNumber());
  };
  const formulaPlace = ({ formula, from }: { formula: string; from: Readonly<Record<string, Fed>> }): number => {
    const slots = Object.entries(from).map(([name, fed]): [string, Slots] => {
      if ("constant" in fed) return [name, tape.constant(dec(fed.constant).toNumber())];
      return [name, "figure" in fed ? slotOf(fed.figure) : fed.figures.map(slotOf)];
    });
    const slot = tape.write(parseExpression(formula), Object.fromEntries(slots));
    if (typeof slot !== "number") throw new RangeError("a formula gave a list where a number was wanted");
    return slot;
  };
  const ends = outputs.map(slotOf);
  const machine = tape.wound();
  return {
    valuesAt: (values) => {
      const slots = machine.run(values);
      return ends.map((end) => slots[end] ?? 0);
    },
    slopesAt: (values) => {
      const slots = machine.run(values);
      return ends.map((end) => [...machine.back(slots, end).subarray(0, inputs.length)]);
    },
  };
}

/** Where a name of a formula stands: one slot, or those of a list. */
type Slots = number | readonly number[];

/** Steps that each fill one slot from slots before it: first the inputs, then constants and results. */
class Tape {
  readonly #inputs: number;
  readonly #constants = new Map<number, number>();
  readonly #steps: (Step | number)[] = [];

  constructor(inputs: number) {
    this.#inputs = inputs;
  }

  constant(value: number): number {
    const known = this.#constants.get(value);
    if (known !== undefined) return known;
    const slot = this.#push(value);
    this.#constants.set(value, slot);
    return slot;
  }

  #push(step: Step | number): number {
    this.#steps.push(step);
    return this.#inputs + this.#steps.length - 1;
  }

  #do(operation: Step["operation"], left: number, right = left): number {
    return this.#push({ operation, left, right });
  }

  write(expression: Expression, names: Readonly<Record<string, Slots>>): Slots {
    switch (expression.kind) {
      case "number":
        return this.constant(Number(expression.text));
      case "name": {
        const slots = names[expression.name];
        if (slots === undefined) throw new RangeError(`a formula misses the value of "${expression.name}"`);
        return slots;
      }
      case "negative":
        return each([this.write(expression.of, names)], ([of = 0]) => this.#do("-", this.constant(0), of));
      case "operation": {
        const { operator, left, right } = expression;
        return each([this.write(left, names), this.write(right, names)], ([a = 0, b = 0]) => this.#do(operator, a, b));
      }
      case "call": {
        const parts = expression.of.map((part) => this.write(part, names));
        return this.#call(expression.name, parts);
      }
    }
  }

  #call(name: FunctionName, parts: readonly Slots[]): Slots {
    if (name !== "sum" && name !== "min" && name !== "max") {
      return each(parts.slice(0, 1), ([of = 0]) => this.#do(name, of));
    }
    const [first = this.constant(0), ...rest] = parts.flat();
    return rest.reduce((left, right) => this.#do(name === "sum" ? "+" : name, left, right), first);
  }

  /** The steps in flat lists, ready to be run again and again. */
  wound(): Machine {
    const slots = new Float64Array(this.#inputs + this.#steps.length);
    const work: { at: number; step: Step }[] = [];
    for (const [index, step] of this.#steps.entries()) {
      const at = this.#inputs + index;
      if (typeof step === "number") slots[at] = step;
      else work.push({ at, step });
    }
    return new Machine(this.#inputs, slots, work);
  }
}

/** Runs steps over slots that it keeps: no run leaves anything to clear away. */
class Machine {
  readonly #inputs: number;
  readonly #slots: Float64Array;
  readonly #at: Int32Array;
  readonly #operations: readonly Step["operation"][];
  readonly #left: Int32Array;
  readonly #right: Int32Array;

  constructor(inputs: number, slots: Float64Array, work: readonly { readonly at: number; readonly step: Step }[]) {
    this.#inputs = inputs;
    this.#slots = slots;
    this.#at = Int32Array.from(work, ({ at }) => at);
    this.#operations = work.map(({ step }) => step.operation);
    this.#left = Int32Array.from(work, ({ step }) => step.left);
    this.#right = Int32Array.from(work, ({ step }) => step.right);
  }

  /** The slots for values of the inputs; the next run writes over them. */
  run(inputs: readonly number[]): Float64Array {
    const slots = this.#slots;
    if (inputs.length !== this.#inputs) throw new RangeError(`${inputs.length} values for ${this.#inputs} inputs`);
    slots.set(inputs);
    for (let index = 0; index < this.#at.length; index += 1) {
      const left = slots[this.#left[index] ?? 0] ?? 0;
      const right = slots[this.#right[index] ?? 0] ?? 0;
      slots[this.#at[index] ?? 0] = done(this.#operations[index] ?? "+", left, right);
    }
    return slots;
  }

  /** What one slot changes by for each unit of every other, from the last step back. */
  back(slots: Float64Array, end: number): Float64Array {
    const slopes = new Float64Array(slots.length);
    slopes[end] = 1;
    for (let index = this.#at.length - 1; index >= 0; index -= 1) {
      const at = this.#at[index] ?? 0;
      const slope = slopes[at] ?? 0;
      if (slope === 0) continue;
      const [left, right] = [this.#left[index] ?? 0, this.#right[index] ?? 0];
      const operation = this.#operations[index] ?? "+";
      const [byLeft, byRight] = slopesOf(operation, slots[left] ?? 0, slots[right] ?? 0, slots[at] ?? 0);
      slopes[left] = (slopes[left] ?? 0) + slope * byLeft;
      slopes[right] = (slopes[right] ?? 0) + slope * byRight;
    }
    return slopes;
  }
}

function each(parts: readonly Slots[], work: (slots: readonly number[]) => number): Slots {
  const lengths = parts.flatMap((part) => (typeof part === "number" ? [] : [part.length]));
  const [length] = lengths;
  if (length === undefined) return work(parts.flat());
  if (lengths.some((other) => other !== length)) throw new RangeError("a formula joins lists of unlike length");
  return Array.from({ length }, (_, index) =>
    work(parts.map((part) => (typeof part === "number" ? part : (part[index] ?? 0)))),
  );
}

/** Doubles that are whole to this many parts of themselves count as whole, as in the exact formulas. */
const wholeWithin = 1e-12;

function done(operation: Step["operation"], a: number, b: number): number {
  switch (operation) {
    case "+":
      return a + b;
    case "-":
      return a - b;
    case "*":
      return a * b;
    case "/":
      return a / b;
    case "^":
      return a ** b;
    case "min":
    case "max":
    case "sqrt":
    case "exp":
      return operation === "min" || operation === "max" ? Math[operation](a, b) : Math[operation](a);
    case "ln":
      return Math.log(a);
    case "sum":
      return a;
    case "ceil":
    case "floor": {
      const nearest = Math.round(a);
      return Math.abs(a - nearest) <= Math.abs(a) * wholeWithin ? nearest : Math[operation](a);
    }
  }
}

/** How fast a step's result changes with its left and its right side; a function of one side has all of it on the left. */
function slopesOf(operation: Step["operation"], a: number, b: number, result: number): readonly [number, number] {
  switch (operation) {
    case "+":
      return [1, 1];
    case "-":
      return [1, -1];
    case "*":
      return [b, a];
    case "/":
      return [1 / b, -result / b];
    case "^":
      return [b * a ** (b - 1), 0];
    case "min":
    case "max":
      return result === a ? [1, 0] : [0, 1];
    case "sqrt":
      return [1 / (2 * result), 0];
    case "exp":
      return [result, 0];
    case "ln":
      return [1 / a, 0];
    case "sum":
      return [1, 0];
    case "ceil":
    case "floor":
      return [0, 0];
  }
}
