// Names, crops and sources of the shipped profiles, in Dutch.
import type { SharedWords } from '../shared-words.ts';

export const profiles: SharedWords['profiles'] = {
  names: {
    tomato: 'Tomaat, gangbare praktijk',
    solanaceous: 'Nachtschadigen, warme kamer',
    cucurbit: 'Komkommerachtigen, warme kamer',
  },
  crops: {
    tomato: 'Tomaat',
    solanaceous: 'Tomaat, aubergine, paprika',
    cucurbit: 'Watermeloen, meloen, komkommer',
  },
  sources: {
    practice: 'gangbare praktijk',
    ours: 'van ons',
    starting: 'van ons: startprofiel, niet gepubliceerd',
    wilt: 'onderzoek met tomatenplugjes (licht dampdeficit): enten verwelken bij 80–90 %RV',
    healingHumidity: 'samenvatting van Johnson & Miles 2011, HortTechnology 21(6):752: 85–100 %RV, uit de tweede hand',
    callus: 'Hartmann & Kester, uit het geheugen: callus groeit traag onder 20 °C en slecht boven 32 °C',
    watermelonNight:
      'watermeloen op fleskalebas, samenvatting: verbonden na 5 d met nachten van 18 °C, na 7 d met 15 °C',
    watermelonHumidity:
      'Koreaans onderzoek met watermeloen, samenvatting: meer dan 90 % slaagt bij 28 °C en meer dan 80 %RV',
    watermelonVpd: 'Koreaans onderzoek met watermeloen, samenvatting: meer dan 90 % slaagt onder 0,76 kPa',
  },
};
