// In English: how to read strip and figures.
export const legend = {
  legend: {
    title: 'How to read the strip and the figures',
    intro:
      'One strip is one batch, from closing the tent at the left to the end of hardening at the right; one cell is one day.',
    band: 'Green band: the humidity the plan wants. It stays high, then comes down in steps.',
    line: 'Blue line: humidity measured. The pale cloud round it is the lowest and highest of that time.',
    house: 'Thin grey lines: the air of the house. Its humidity is where the band is heading.',
    temperature: 'Brown line: temperature. Dashed: the limits it must stay between; long dashes: the outer limit.',
    checks: 'Dots: checks. Full = answered yes, crossed = answered no, ring = still to come, diamond = due or missed.',
    log: 'Small signs under the dots: drop = misted, two strokes = gap changed, arrow down = limp, arrow up = erect, one stroke = anything else.',
    forecast: 'Brown cone to the right of now: where the hottest probe is heading. Eight of ten times it stays inside.',
    doubted: 'Small flags at the foot: readings that were doubted. They are in no line.',
    hold: 'Grey stretch after two strokes: the batch was on hold, the plan stood still.',
    alarm:
      'Red bar: an alarm, as long as it lasted. With hatching it speaks of that air; under the dots, of a probe or a check.',
    gap: 'Grey hatching: nothing was heard. It is left open, not filled in.',
    now: 'Red upright line: now. Paler to the right of it: the plan ahead.',
    figures: 'The figures',
    vpd: 'VPD (vapour pressure deficit, in kPa) is how strongly the air draws water from the leaves, reckoned from temperature and humidity together. Near 0 it draws nothing; the higher it is, the sooner a fresh graft wilts.',
    beyond:
      'Underlined in red: outside the plan now, at the hottest, coldest or driest probe. Grey and slanted: too old to go by.',
    shapes: 'Shapes of the states',
    shapeWords: {
      hot: 'too hot',
      warming: 'heat is coming',
      cold: 'too cold',
      dry: 'too dry',
      wet: 'too wet',
      silent: 'a probe is silent',
      gone: 'the whole chamber is silent',
      old: 'climate not known',
      overdue: 'check missed',
      due: 'check due',
      watch: 'just outside the plan',
      hold: 'on hold',
      order: 'in order',
      empty: 'no batch',
    },
  },
};
