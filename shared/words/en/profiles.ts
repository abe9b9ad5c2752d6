// Names, crops and sources of the shipped profiles, in English. A stored profile carries these words; `say-standard-text.ts` finds the others by them.
export const profiles = {
  names: {
    tomato: 'Tomato, common practice',
    solanaceous: 'Solanaceous, warm chamber',
    cucurbit: 'Cucurbit, warm chamber',
  },
  crops: {
    tomato: 'Tomato',
    solanaceous: 'Tomato, eggplant, pepper',
    cucurbit: 'Watermelon, melon, cucumber',
  },
  sources: {
    practice: 'common practice',
    ours: 'ours',
    /** Starting figures that were put together from several sources and are not published as a plan. */
    starting: 'ours: starting profile, not published',
    wilt: 'tomato plug seedling study (slight vapour deficit): scions wilt at 80–90 %RH',
    healingHumidity: 'summary of Johnson & Miles 2011, HortTechnology 21(6):752: 85–100 %RH, read second-hand',
    callus: 'Hartmann & Kester, from memory: callus is slow below 20 °C and poor above 32 °C',
    watermelonNight: 'watermelon on bottle gourd, abstract: bridges at 5 d with nights of 18 °C, at 7 d with 15 °C',
    watermelonHumidity: 'Korean watermelon study, abstract: survival above 90 % at 28 °C with more than 80 %RH',
    watermelonVpd: 'Korean watermelon study, abstract: survival above 90 % below 0.76 kPa',
  },
};
