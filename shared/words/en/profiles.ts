// Names, crops, notes and sources of the shipped profiles, in English. A stored profile carries these words; `say-standard-text.ts` finds the others by them.
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
  notes: {
    tomato:
      'Dutch-style glasshouse work, as commonly done; not published. Before grafting: stems 1.5 mm and equal, sorted no later than two days before; feed and water the day before; tent 30–40 cm high; clip graft cut at 45°. Grafting room and tent at 21–22 °C and 80–90 %RH, no direct sun; the alarm limits while loading lie 2 °C and 5 %RH wider. The tent never goes above 28–29 °C. Slightly limp is all right up to one day, after that scions must stand erect. Closed for at least four days; on day 4 a look through a gap; from the morning of day 5 vent in stages to house humidity in two days; fully open on day 7 if they stay erect. Sun only when the film is off. Then two days of hardening with feed, moving gradually to growing temperature.',
    solanaceous:
      'A starting profile of our own for a heated chamber, put together from several sources; not published: change it to what your house shows. 24–27 °C. At least 95 %RH on days 1–3, 92 on day 4, 90 on day 5; 85–90 on day 6, 75–85 on day 7, house level after. The steps come at 07:00 of each day from day 4 on. Do not saturate the substrate while healing.',
    cucurbit:
      'A starting profile of our own, put together from several sources; not published: change it to what your house shows. 25–28 °C by day and at least 18 °C at night; the low limit is that of the night, so watch by day that the chamber comes to 25 °C. At least 95 %RH on days 1–3, 92 on day 4, 90 on day 5; 88–92 on day 6, 80–88 on day 7, toward house level on day 8, out on day 9. The steps come at 07:00 of each day from day 4 on.',
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
