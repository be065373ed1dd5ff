/** Names of stations, stages, members and settings, as the trade says them. */
export const stageWords = {
  'station.milling': 'Milling',
  'station.band-saw': 'Band saw',
  'station.spindle-sander': 'Spindle sander',
  'station.router-table': 'Router table',
  'station.table-saw': 'Table saw',
  'station.mortiser': 'Mortiser',
  'station.bench': 'Bench',
  'station.assembly': 'Assembly',
  'station.fitting': 'Fitting',
} as const;
