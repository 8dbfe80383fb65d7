// What every panel of a visit is given: the session to act through, the view that was answered, and its own part of it.
import type { Panel } from '../../lib/generated/Panel';
import type { VisitView } from '../../lib/generated/VisitView';
import type { VisitSession } from '../../lib/visit.svelte';

export interface PanelProps<K extends Panel['panel']> {
  session: VisitSession;
  view: VisitView;
  panel: Extract<Panel, { panel: K }>;
}
