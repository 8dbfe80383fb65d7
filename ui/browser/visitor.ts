// Drives a visit by asking the server directly, one act at a time, as an operator would who does what is advised. Tests
// use it to reach a panel; what the panel looks like and does is for the tests.
import type { Act } from '../src/lib/generated/Act';
import type { Ask } from '../src/lib/generated/Ask';
import type { CheckView } from '../src/lib/generated/CheckView';
import type { LaterChoice } from '../src/lib/generated/LaterChoice';
import type { Panel } from '../src/lib/generated/Panel';
import type { PlanChoice } from '../src/lib/generated/PlanChoice';
import type { VisitView } from '../src/lib/generated/VisitView';
import type { WeatherInput } from '../src/lib/generated/WeatherInput';
import type { App } from './app';

/** A further lawn with nothing chosen yet: what fits it is filled in by the trade. */
export const further = (lawn_id: string): LaterChoice => ({
  lawn_id,
  n_passes: 0,
  headings: [],
  start: '',
  narrow: '',
  angle_deg: 0,
  narrow_at: 'last',
  edge_first: false,
  applied: 'nothing',
  applied_on: '',
  survivors: '',
  sown_on: '',
  mown_on: '',
});

/** A day on which one may spray. */
export const FINE_DAY: WeatherInput = {
  wind_by: 'sign',
  wind_force: 2,
  wind_speed: { text: '', unit: 'm/s' },
  wind_height: { text: '', unit: 'm' },
  wind_towards: 'front',
  gusts: 'no',
  rain_now: 'no',
  dry_hours: { text: '12', unit: 'hour' },
  temperature: { text: '14', unit: 'degC' },
  grass: 'dry',
  ground: 'open',
  drought: 'no',
  wind_from: '',
  gust_speed: { text: '', unit: 'm/s' },
  humidity: { text: '65', unit: 'percent' },
  altitude: { text: '', unit: 'm' },
  sky: 'cloudy',
};

const passable = (checks: CheckView[]): CheckView | undefined =>
  checks.find((check) => check.verdict === 'stop' && check.can_be_passed && check.passed_because === null);

/** The next thing such an operator would do; nothing when the visit is closed. */
export function nextAct(view: VisitView, change: Partial<PlanChoice> = {}): Act | null {
  const panel: Panel = view.panel;
  switch (panel.panel) {
    case 'assess':
      return {
        act: 'assess',
        input: {
          target: 'moss',
          share: 'some',
          applied: 'nothing',
          applied_what: '',
          applied_on: '',
          survivors: panel.look_back === null ? '' : 'edges',
          situation: 'lawn',
          sown_on: '',
          mown_on: '',
        },
      };
    case 'choose': {
      const product = panel.products.find((one) => one.verdict !== 'stop');
      if (product === undefined) throw new Error('no product may be chosen');
      return { act: 'choose_product', product_id: product.product_id };
    }
    case 'kit': {
      const kit = panel.kits.find((one) => one.verdict !== 'stop');
      if (kit === undefined) throw new Error('no kit may be chosen');
      return { act: 'choose_kit', kit_id: kit.kit_id };
    }
    case 'plan':
      return { act: 'agree_plan', choice: { ...panel.choice, ...change } };
    case 'ready': {
      const open = panel.items.find((item) => !item.is_ticked);
      if (open !== undefined) return { act: 'tick_ready', item: open.item, on: true };
      if (panel.water !== null && !panel.water.is_seen) return { act: 'see_water', input: panel.water.input };
      if (panel.jar?.outcome === '') return { act: 'jar_tested', outcome: 'fine', note: '' };
      if (panel.weather.wind_by === '') return { act: 'see_weather', input: FINE_DAY };
      const stop = passable([...panel.checks, ...view.checks]);
      if (stop !== undefined) return { act: 'pass_advisory', rule: stop.rule, reason: 'invented for this test' };
      return { act: 'begin_mixing' };
    }
    case 'mix': {
      if (panel.left_asked !== null)
        return { act: 'read_left', left: { text: '', unit: panel.left_asked.planned.unit } };
      const open = panel.steps.find((step) => !step.is_ticked);
      if (open !== undefined) return { act: 'tick_mix', item: open.item, on: true };
      if (view.weather_due !== null) return { act: 'see_weather', input: FINE_DAY };
      return {
        act: 'fill_made',
        product: { text: '', unit: panel.fill.product.unit },
        volume: { text: '', unit: panel.fill.mixture.unit },
        partners: [],
        containers: [],
      };
    }
    case 'walk':
      // The tank is looked into after every pass, so that every panel is seen.
      if (panel.paused === null && panel.main.act === 'pass_done_as_planned') return { act: 'pass_done' };
      return panel.paused === null ? panel.main : { act: 'resume', seen: panel.again.map((item) => item.item) };
    case 'pass_end':
      return { act: 'tank_left', left: { text: '', unit: panel.planned_left.unit } };
    case 'correct': {
      const advised =
        panel.options.find((option) => option.is_advised) ?? panel.options.find((option) => option.can_be_chosen);
      return { act: 'correct', choice: advised?.choice ?? 'as_planned' };
    }
    case 'next_lawn': {
      const open = panel.items.find((item) => !item.is_ticked);
      if (open !== undefined) return { act: 'tick_ready', item: open.item, on: true };
      return panel.can_begin ? { act: 'begin_next_lawn' } : { act: 'see_weather', input: FINE_DAY };
    }
    case 'use_up': {
      const advised =
        panel.options.find((option) => option.is_advised) ?? panel.options.find((option) => option.can_be_chosen);
      return { act: 'use_up', choice: advised?.choice ?? 'none' };
    }
    case 'wash': {
      const open = panel.steps.find((step) => !step.is_ticked);
      if (view.weather_due !== null) return { act: 'see_weather', input: FINE_DAY };
      return open === undefined ? { act: 'wash_done' } : { act: 'tick_wash', item: open.item, on: true };
    }
    case 'close':
      return {
        act: 'close',
        input: {
          ...panel.input,
          name: 'Demo Operator',
          certificate: 'DEMO-CERT-0001',
          cause: panel.asks_cause ? 'unknown' : '',
        },
      };
    case 'closed':
      return null;
  }
}

export class Visitor {
  view!: VisitView;
  /** What this operator chooses differently from the advised plan. */
  change: Partial<PlanChoice> = {};

  constructor(
    readonly app: App,
    readonly visitId: string = crypto.randomUUID(),
  ) {}

  /** Opens a visit to the lawn of this name. */
  async open(lawnName: string): Promise<void> {
    const home = await this.app.ask({ ask: 'home' });
    if (home.answer !== 'home') throw new Error('no first page');
    const lawn = home.value.lawns.find((line) => line.name === lawnName);
    if (lawn === undefined) throw new Error(`no lawn called ${lawnName}`);
    await this.#take({
      ask: 'open_visit',
      rest_of: null,
      visit_id: this.visitId,
      command_id: crypto.randomUUID(),
      lawn_id: lawn.lawn_id,
    });
  }

  async act(act: Act): Promise<void> {
    await this.#take({
      ask: 'act',
      draft_key: null,
      visit_id: this.visitId,
      command_id: crypto.randomUUID(),
      expected_seq: this.view.seq,
      act,
    });
  }

  /** Looks again: a screen may have acted meanwhile. */
  async look(): Promise<VisitView> {
    await this.#take({ ask: 'visit', visit_id: this.visitId });
    return this.view;
  }

  /** Does what comes next until this panel has the word. */
  async until(panel: Panel['panel']): Promise<void> {
    for (let n = 0; n < 400; n += 1) {
      if (this.view.panel.panel === panel) return;
      const act = nextAct(this.view, this.change);
      if (act === null) throw new Error(`closed before ${panel}`);
      await this.act(act);
    }
    throw new Error(`never came to ${panel}`);
  }

  async #take(ask: Ask): Promise<void> {
    const answer = await this.app.ask(ask);
    if (answer.answer !== 'visit') throw new Error(`answered ${answer.answer}`);
    this.view = answer.value;
  }
}
