// In Dutch: how to read strip and figures.
import type { legend as english } from '../en/legend.ts';

export const legend: typeof english = {
  legend: {
    title: 'Hoe je de strook en de cijfers leest',
    intro:
      'Eén strook is één partij, van het sluiten van de tent links tot het eind van het afharden rechts; één vak is één dag.',
    band: 'Groene band: de luchtvochtigheid die het plan wil. Hij blijft hoog en daalt dan in stappen.',
    line: 'Blauwe lijn: gemeten luchtvochtigheid. De lichte wolk eromheen is de laagste en hoogste waarde van die tijd.',
    house: 'Dunne grijze lijnen: de kaslucht. Naar die luchtvochtigheid gaat de band toe.',
    temperature: 'Bruine lijn: temperatuur. Gestreept: de grenzen; lange strepen: de uiterste grens.',
    checks: 'Stippen: controles. Vol = ja, doorgekruist = nee, ring = komt nog, ruit = nodig of gemist.',
    log: 'Kleine tekens onder de stippen: druppel = geneveld, twee streepjes = kier veranderd, pijl omlaag = slap, pijl omhoog = rechtop, één streepje = al het andere.',
    forecast:
      'Bruine kegel rechts van nu: waar de warmste voeler naartoe gaat. Acht van de tien keer blijft hij erbinnen.',
    doubted: 'Vlaggetjes onderaan: metingen die zijn betwijfeld. Ze zitten in geen enkele lijn.',
    hold: 'Grijs stuk na twee strepen: de partij was gepauzeerd, het plan stond stil.',
    alarm:
      'Rode balk: een alarm, zo lang als het duurde. Gearceerd gaat het over die lucht; onder de stippen over een voeler of controle.',
    gap: 'Grijs gearceerd: er is niets gehoord. Het blijft open en wordt niet opgevuld.',
    now: 'Rode staande lijn: nu. Lichter rechts daarvan: het plan dat nog komt.',
    figures: 'De cijfers',
    vpd: 'VPD (dampdrukdeficit, in kPa) is hoe sterk de lucht water uit het blad trekt, berekend uit temperatuur en luchtvochtigheid samen. Bij 0 trekt hij niets; hoe hoger, hoe sneller een verse ent verwelkt.',
    beyond:
      'Rood onderstreept: nu buiten het plan, bij de warmste, koudste of droogste voeler. Grijs en schuin: te oud om op af te gaan.',
    shapes: 'Tekens van de toestanden',
    shapeWords: {
      hot: 'te heet',
      warming: 'er komt hitte aan',
      cold: 'te koud',
      dry: 'te droog',
      wet: 'te nat',
      silent: 'een voeler zwijgt',
      gone: 'de hele tent zwijgt',
      old: 'klimaat niet bekend',
      overdue: 'controle gemist',
      due: 'controle nodig',
      watch: 'net buiten het plan',
      hold: 'gepauzeerd',
      order: 'in orde',
      empty: 'geen partij',
    },
  },
};
