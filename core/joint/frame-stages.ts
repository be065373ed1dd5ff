import type { Length } from '../length/length.ts';
import type { Joint } from './derive.ts';
import { exact, plain, type StageDraft } from './stage-draft.ts';
import type { Tooling } from './tooling.ts';

/** Milling to size: the first stage of every part. */
export function mill(
  length: Length,
  width: Length,
  thickness: Length,
  reasons: {
    length: 'why.stile-length' | 'why.rail-length' | 'why.panel-height';
    width: 'why.member-width' | 'why.top-rail-width' | 'why.panel-width';
  },
  figures: { length: Record<string, Length>; width: Record<string, Length> },
): StageDraft {
  return {
    stage: 'mill',
    station: 'milling',
    after: [],
    entries: [
      exact('length', length, 'from.end', reasons.length, figures.length),
      exact('width', width, 'from.edge', reasons.width, figures.width),
      exact('thickness', thickness, 'from.face', 'why.thickness'),
    ],
  };
}

/** Sticking the bead, front down on the router table. */
export function bead(joint: Joint, after: string): StageDraft {
  const { wall, fillet, spec } = joint;
  const figures = { wall, bead: spec.bead, thickness: spec.thickness, groove: spec.groove.width };
  return {
    stage: 'bead',
    station: 'router-table',
    after: [after],
    entries: [
      exact('bead', spec.bead, 'from.sight-edge', 'why.bead'),
      exact('fillet', fillet, 'from.front', 'why.fillet', figures),
      exact('cutterHeight', wall, 'from.table', 'why.cutterHeight', figures),
    ],
  };
}

/** Ploughing the groove on the table saw: two passes, one with each face to the fence, so that it is centred. */
export function groove(joint: Joint, tooling: Tooling, after: string): StageDraft {
  const { groove: cut } = joint.spec;
  return {
    stage: 'groove',
    station: 'table-saw',
    after: [after],
    entries: [
      exact('width', cut.width, 'from.between', 'why.groove-width'),
      exact('depth', cut.depth, 'from.sight-edge', 'why.groove-depth'),
      exact('fence', joint.wall, 'from.face-fence', 'why.wall', {
        thickness: joint.spec.thickness,
        groove: cut.width,
        wall: joint.wall,
      }),
      ...(tooling.dado === null
        ? []
        : [exact('blade', tooling.dado, 'from.none', 'why.dado', { groove: cut.width })]),
    ],
  };
}

/** A mitre and its shoulder line from one end of a stile, or from each end of a rail. */
export function mitre(
  stage: string,
  after: string,
  sightEdge: {
    value: Length;
    reason:
      'why.mitre-bottom' | 'why.mitre-top' | 'why.mitre-mid-lower' | 'why.mitre-mid-upper' | 'why.mitre-rail';
    figures: Record<string, Length>;
  },
  shoulderLine: Length,
  height: Length,
  end: 'top' | 'bottom' | null,
): StageDraft {
  const from = end === null ? 'from.rail-end' : end === 'top' ? 'from.top-end' : 'from.bottom-end';
  return {
    stage,
    station: 'table-saw',
    after: [after],
    entries: [
      ...(end === null ? [] : [plain('fromEnd', end, 'from.chosen', 'why.fromEnd')]),
      exact('sightEdge', sightEdge.value, from, sightEdge.reason, {
        ...sightEdge.figures,
        sightEdge: sightEdge.value,
      }),
      exact('shoulderLine', shoulderLine, from, 'why.shoulderLine', {
        sightEdge: sightEdge.value,
        bead: height,
        shoulderLine,
      }),
      exact('height', height, 'from.table', 'why.mitre-height'),
      plain('tilt', 45, 'from.square', 'why.tilt'),
    ],
  };
}
