// Names, crops, notes and sources of the shipped profiles, in Dutch.
import type { SharedWords } from '../shared-words.ts';

export const profiles: SharedWords['profiles'] = {
  names: {
    tomato: 'Tomaat, gangbare praktijk',
    solanaceous: 'Nachtschadigen, warme ruimte',
    cucurbit: 'Komkommerachtigen, warme ruimte',
  },
  crops: {
    tomato: 'Tomaat',
    solanaceous: 'Tomaat, aubergine, paprika',
    cucurbit: 'Watermeloen, meloen, komkommer',
  },
  notes: {
    tomato:
      'Nederlandse glastuinbouw, zoals gebruikelijk; niet gepubliceerd. Voor het enten: stengels van 1,5 mm en gelijk, hoogstens twee dagen eerder gesorteerd; de dag ervoor voeding en water geven; tent 30–40 cm hoog; enten met clip, schuin gesneden op 45°. Entruimte en tent op 21–22 °C en 80–90 %RV, geen directe zon; tijdens het vullen liggen de alarmgrenzen 2 °C en 5 %RV ruimer. De tent komt nooit boven 28–29 °C. Iets slap mag tot één dag, daarna moeten de enten rechtop staan. Minstens vier dagen dicht; op dag 4 even door een kier kijken; vanaf de ochtend van dag 5 in stappen luchten tot de luchtvochtigheid van de kas, in twee dagen; op dag 7 helemaal open als ze rechtop blijven. Zon pas als de folie eraf is. Daarna twee dagen afharden met voeding, geleidelijk naar de teelttemperatuur.',
    solanaceous:
      'Een eigen startprofiel voor een verwarmde ruimte, samengesteld uit meerdere bronnen; niet gepubliceerd: pas het aan naar wat jouw kas laat zien. 24–27 °C. Op dag 1–3 minstens 95 %RV, 92 op dag 4, 90 op dag 5; 85–90 op dag 6, 75–85 op dag 7, daarna het niveau van de kas. De stappen komen vanaf dag 4 elke dag om 07:00. Maak het substraat tijdens het vergroeien niet verzadigd nat.',
    cucurbit:
      'Een eigen startprofiel, samengesteld uit meerdere bronnen; niet gepubliceerd: pas het aan naar wat jouw kas laat zien. Overdag 25–28 °C en ’s nachts minstens 18 °C; de ondergrens is die van de nacht, dus let er overdag op dat de ruimte 25 °C haalt. Op dag 1–3 minstens 95 %RV, 92 op dag 4, 90 op dag 5; 88–92 op dag 6, 80–88 op dag 7, naar het niveau van de kas op dag 8, eruit op dag 9. De stappen komen vanaf dag 4 elke dag om 07:00.',
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
