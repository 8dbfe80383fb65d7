// Every screen of the app and how to reach it, in the order an operator meets them. Tests that hold for all screens go
// through this list.
import type { Page } from '@playwright/test';
import { GROUPS } from '../src/lib/label';
import type { Panel } from '../src/lib/generated/Panel';
import { startApp, type App } from './app';
import { baselinePart, bentLawn, bracedPart, keepLawn, lawnOf, part, walkRound } from './lawns';
import { demoOperator } from './operator';
import { further, Visitor } from './visitor';

const LAWN = 'Front lawn';
const BENT = 'Six-cornered lawn';

/** Loads a page anew and waits until it stands. */
export async function show(page: Page, app: App, hash: string, query = ''): Promise<void> {
  // A change of the hash alone would not load the page anew.
  await page.goto('about:blank');
  await page.goto(app.at(hash, query));
  await page.locator('main[data-ready="true"]').waitFor();
  await page.evaluate(() => document.fonts.ready);
}

/** The lawn's form in every way of measuring, and the two pages on which things are dragged. */
async function everyWayOfMeasuring(
  page: Page,
  app: App,
  query: string,
  look: (name: string) => Promise<void>,
): Promise<void> {
  const fixes = walkRound().map((fix) => ({ ...fix, accuracy_m: 2, at_ms: null }));
  const lawns = {
    'lawn-braces': lawnOf('Braced lawn', [bracedPart('AC')]),
    'lawn-baseline': lawnOf('Baseline lawn', [baselinePart()]),
    'lawn-walked': lawnOf('Walked lawn', [part({ way: 'walked', walked: { rounds: [fixes, fixes], from: 'device' } })]),
    'lawn-bent': bentLawn(BENT),
  };
  for (const [name, lawn] of Object.entries(lawns)) {
    const id = await keepLawn(app, lawn);
    await show(page, app, `#/lawn/${id}`, query);
    await page.locator('svg[role="img"]').first().waitFor();
    await look(name);
  }
  await page.locator('[data-act="draw"]').click();
  await page.locator('button.handle').nth(3).focus();
  await page.keyboard.press('ArrowLeft');
  await look('lawn-corners');
  await page.locator('button.main-act').click();
  await page.locator('[data-act="places"]').click();
  await look('lawn-places');
}

/** Shows every screen in turn and calls `look` on each. */
export async function everyScreen(page: Page, query: string, look: (name: string) => Promise<void>): Promise<void> {
  const empty = await startApp(true);
  try {
    await show(page, empty, '#/home', query);
    await look('first-start');
    await empty.ask({
      ask: 'save_operator',
      input: demoOperator,
      draft_key: null,
    });
    await show(page, empty, '#/home', query);
    await look('first-lawn');
    await show(page, empty, `#/lawn/${crypto.randomUUID()}`, query);
    await look('lawn-empty');
    await show(page, empty, `#/product/${crypto.randomUUID()}`, query);
    await look('label-empty');
  } finally {
    empty.end();
  }

  const app = await startApp();
  try {
    await show(page, app, '#/home', query);
    await look('lawns');
    for (const place of ['me', 'settings', 'products', 'kits']) {
      await show(page, app, `#/${place}`, query);
      await look(place);
    }
    const home = await app.ask({ ask: 'home' });
    const products = await app.ask({ ask: 'products' });
    const kits = await app.ask({ ask: 'kits' });
    if (home.answer !== 'home' || products.answer !== 'products' || kits.answer !== 'kits') throw new Error('no lists');
    const lawn = home.value.lawns.find((line) => line.name.includes('pond')) ?? home.value.lawns[0];
    const product = products.value[0];
    const kit = kits.value[0];
    if (lawn === undefined || product === undefined || kit === undefined) throw new Error('an empty firm');
    await show(page, app, `#/lawn/${lawn.lawn_id}`, query);
    await page.locator('svg[role="img"]').first().waitFor();
    await look('lawn');
    await everyWayOfMeasuring(page, app, query, look);
    await show(page, app, `#/product/${product.id}`, query);
    for (const [idx, group] of GROUPS.entries()) {
      await look(`label-${idx + 1}-${group}`);
      if (idx < GROUPS.length - 1) await page.locator('button.main-act').click();
    }
    await show(page, app, `#/label-versions/${product.id}`, query);
    await look('label-versions');
    const versions = await app.ask({ ask: 'label_versions', product_id: product.id });
    if (versions.answer !== 'label_versions') throw new Error('no versions');
    await show(page, app, `#/label/${versions.value.versions.at(-1)?.label_id}`, query);
    await look('label-version');
    await show(page, app, '#/shelf', query);
    await look('shelf');
    const shelf = await app.ask({ ask: 'shelf' });
    const container = shelf.answer === 'shelf' ? shelf.value.products[0]?.containers[0] : undefined;
    if (container === undefined) throw new Error('an empty shelf');
    await show(page, app, `#/container/${container.container_id}`, query);
    await look('shelf-container');
    await show(page, app, `#/count/${container.container_id}`, query);
    await page.locator('input[name="left"]').fill('3.2');
    await page.locator('input[name="left"]').blur();
    await look('shelf-count');
    await show(page, app, `#/kit/${kit.id}`, query);
    await look('kit');
    await show(page, app, `#/calibrate/${kit.id}`, query);
    await look('calibrate');
    await show(page, app, `#/trial/${kit.id}`, query);
    await look('trial');
    await show(page, app, `#/clean/${kit.id}`, query);
    await look('kit-cleaning');
    await show(page, app, `#/ask/${kit.id}`, query);
    await page.locator('input[name="wanted"]').fill('30');
    await page.locator('section[aria-live]').waitFor();
    await look('kit-answers');

    const visitor = new Visitor(app);
    await visitor.open(LAWN);
    const hash = `#/visit/${visitor.visitId}`;
    const panel = async (name: Panel['panel'], shown: string): Promise<void> => {
      await visitor.until(name);
      await show(page, app, hash, query);
      await look(shown);
    };
    await panel('assess', 'visit-assess');
    await panel('choose', 'visit-choose');
    await panel('kit', 'visit-kit');
    await panel('plan', 'visit-plan');
    await panel('ready', 'visit-ready');
    await panel('mix', 'visit-mix');
    await panel('walk', 'visit-walk');
    await page.locator('.beat button').first().click();
    await page.locator('svg.sign').waitFor();
    await look('visit-walk-beat');
    await page.locator('.beat button').last().click();
    await look('visit-walk-locked');
    for (const number of [0, 1, 2]) await page.locator('.numbers button').nth(number).click();
    await page.evaluate(() => history.back());
    await page.locator('.leave').waitFor();
    await look('visit-walk-leave');
    await page.locator('.leave button').first().click();
    await page.locator('.beat button').first().click();
    await page.locator('.small-acts button').last().click();
    await look('visit-walk-more');
    await visitor.act({ act: 'pause', reason: 'wind', note: '' });
    await show(page, app, hash, query);
    await look('visit-walk-paused');
    await panel('pass_end', 'visit-pass-end');
    if (visitor.view.panel.panel === 'pass_end') {
      // A little less than planned, so that something must be put right, and can be.
      const { value, unit } = visitor.view.panel.planned_left;
      await visitor.act({ act: 'tank_left', left: { text: (value - 0.5).toFixed(2), unit } });
    }
    await panel('correct', 'visit-correct');
    await visitor.act({ act: 'undo' });
    if (visitor.view.panel.panel === 'pass_end') {
      // Clearly more than planned: why is asked.
      const { value, unit } = visitor.view.panel.planned_left;
      await visitor.act({ act: 'tank_left', left: { text: (value - 1.5).toFixed(2), unit } });
    }
    await panel('correct', 'visit-correct-why');
    await visitor.act({ act: 'tell_cause', cause: 'pressure_high', note: '' });
    await show(page, app, hash, query);
    await look('visit-correct-told');
    await visitor.until('walk');
    await show(page, app, hash, query);
    await look('visit-walk-second');
    await panel('use_up', 'visit-use-up');
    await panel('wash', 'visit-wash');
    await panel('close', 'visit-close');
    await panel('closed', 'visit-closed');
    await show(page, app, `#/record/${visitor.visitId}`, query);
    await look('record');

    const bent = new Visitor(app);
    bent.change = { n_passes: 2, headings: ['along', 'along'] };
    await bent.open(BENT);
    await bent.until('plan');
    await show(page, app, `#/visit/${bent.visitId}`, query);
    await look('visit-plan-bent');

    const mixed = new Visitor(app);
    await keepLawn(app, bentLawn('Shared-tank lawn'));
    await mixed.open('Shared-tank lawn');
    await mixed.until('plan');
    if (mixed.view.panel.panel === 'plan') {
      const other = mixed.view.panel.partners.can_add.find((one) => one.verdict !== 'stop');
      if (other === undefined) throw new Error('no product that may share the tank');
      const asItsLabel = { text: '', unit: '' };
      await mixed.act({ act: 'add_partner', product_id: other.product_id, dose: asItsLabel });
    }
    for (const name of ['plan', 'ready', 'mix'] as const) {
      await mixed.until(name);
      await show(page, app, `#/visit/${mixed.visitId}`, query);
      await look(`visit-${name}-partners`);
    }

    const several = new Visitor(app);
    await several.open('Number 4, front');
    await several.until('plan');
    if (several.view.panel.panel === 'plan') {
      const { choice, lawns } = several.view.panel;
      const next = lawns[0];
      if (next === undefined) throw new Error('no further lawn');
      await several.act({ act: 'agree_plan', choice: { ...choice, later: [further(next.lawn_id)] } });
    }
    await several.until('next_lawn');
    await show(page, app, `#/visit/${several.visitId}`, query);
    await look('visit-next-lawn');

    const again = new Visitor(app);
    again.change = { guide: 'strip' };
    await again.open('Back lawn by the pond');
    await again.until('walk');
    await show(page, app, `#/visit/${again.visitId}`, query);
    await look('visit-walk-strip');
    await page.locator('button.main-act').click();
    await page.locator('svg.sign').waitFor();
    await look('visit-walk-strip-begun');
    await again.act({ act: 'strip_done' });
    await again.act({ act: 'stop_for_good', reason: 'another_day', note: '' });
    if (again.view.panel.panel === 'pass_end') {
      await again.act({ act: 'tank_left', left: { text: '0.8', unit: 'L' } });
    }
    await show(page, app, `#/visit/${again.visitId}`, query);
    await look('visit-use-up-part');
    const input = { ...kit.entry.input, tank: { text: '3', unit: 'L' } };
    await app.ask({ ask: 'save_kit', kit_id: kit.id, input, draft_key: null });
    const short = new Visitor(app);
    await keepLawn(app, bentLawn('Short-tank lawn'));
    await short.open('Short-tank lawn');
    await short.until('walk');
    await short.act({ act: 'refill' });
    await show(page, app, `#/visit/${short.visitId}`, query);
    await look('visit-mix-left');
    await show(page, app, '#/home', query);
    await look('lawns-afterwards');
    await page.locator('button.help').click();
    await look('emergency');
  } finally {
    app.end();
  }
}
