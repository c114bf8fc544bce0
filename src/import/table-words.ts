import { foldWords } from './fold-words.ts';

/**
 * Words in the heads of routes, wear tables and readings, by what they mean in a notebook. The first of each
 * line is the notebook's own.
 */
const GROUPS: readonly string[] = [
  'distance, km, length, leg length, mileage, miles, distanz, strecke, entfernung, lange, longueur, kilometres, distancia, longitud, distanza, lunghezza, afstand, lengte, dystans, odleglosc, dlugosc, расстояние, длина, длина пути, avstand, afstand, matka, vzdalenost, distancia km',
  'start place, start, from, origin, departure, von, ab, de, depart, desde, origen, da, partenza, van, vertrek, od, skad, start punkt, откуда, от, fran, fra, mista, odkud',
  'end place, end, to, finish, destination, arrival, nach, ziel, bis, a, vers, arrivee, hasta, destino, per, arrivo, naar, aankomst, do, dokad, куда, до, till, til, minne, kam',
  'leg, segment, stage, name, section, etappe, abschnitt, etape, troncon, etapa, tramo, tappa, tratto, etap, odcinek, этап, участок, etapp, osuus',
  'surface, road, terrain, road type, belag, untergrund, strassenbelag, revetement, superficie, firme, fondo, wegdek, nawierzchnia, покрытие, underlag, paallyste, povrch',
  'part, component, item, teil, bauteil, piece, pieza, componente, onderdeel, czesc, деталь, запчасть, del, osa, dil',
  'now, reading, measured, measurement, value, current, messwert, gemessen, mesure, lecture, medida, lectura, misura, meting, pomiar, измерение, показание, matning, maling, mittaus',
  'date, day, datum, tag, fecha, data, dato, pvm, дата',
  'limit, wear limit, service limit, min, minimum, verschleissgrenze, grenzwert, limite, limiet, granica, предел, grans',
  'new reading, new, new value, neu, neuwert, neuf, nuevo, nuovo, nieuw, nowy, новый',
  'remark, note, notes, comment, comments, bemerkung, notiz, remarque, observaciones, nota, note, opmerking, uwagi, примечание, anmarkning',
  'age, mileage, run, distance run, laufleistung, alter, kilometrage, kilometraje, percorrenza, kilometerstand, przebieg, пробег, mätarställning',
  'wear class, class, kind, type, klasse, verschleissklasse, art, type d usure',
  'help distance, distance to help, help, nearest help, hilfe',
  'fuel price, fuel, petrol price, spritpreis, prix carburant, precio combustible',
  'wait days, wait, waiting days, wartetage',
];

const groupsOf = new Map<string, Set<number>>();
GROUPS.forEach((words, group) => {
  for (const word of words.split(',')) {
    const folded = foldWords(word);
    const held = groupsOf.get(folded);
    if (held === undefined) groupsOf.set(folded, new Set([group]));
    else held.add(group);
  }
});

/**
 * How near the head of a file's column is to a column of the notebook, 0 to 1: the same words, words that mean
 * the same, or one within the other.
 *
 * @param wanted folded words of the notebook's column
 * @param head folded words of the file's head
 * @example nearness('distance', 'entfernung') // 0.85
 */
export function nearness(wanted: string, head: string): number {
  if (wanted === '' || head === '') return 0;
  if (wanted === head) return 1;
  const groups = groupsOf.get(wanted);
  if (groups !== undefined && sharesGroup(groups, head)) return 0.85;
  if (` ${head} `.includes(` ${wanted} `)) return 0.7;
  const words = head.split(' ');
  if (groups !== undefined && words.some((word) => word.length > 2 && sharesGroup(groups, word))) return 0.5;
  return ` ${wanted} `.includes(` ${head} `) && head.length > 3 ? 0.45 : 0;
}

function sharesGroup(groups: ReadonlySet<number>, word: string): boolean {
  const others = groupsOf.get(word);
  if (others === undefined) return false;
  for (const group of others) if (groups.has(group)) return true;
  return false;
}

/** What a row is called, by a column that only tables of its kind have; the first that is there. */
const NOUNS: readonly (readonly [string, string])[] = [
  ['leg', 'a leg'],
  ['start_place', 'a leg'],
  ['wear_class', 'a part'],
  ['reading', 'a reading'],
  ['measured', 'a reading'],
  ['date', 'a reading'],
  ['offer', 'an offer'],
  ['part', 'a part'],
  ['supplier', 'a supplier'],
  ['stop', 'a stop'],
];

/**
 * What a row of a table is, with its article, by the names of its columns.
 *
 * @example rowNoun(['leg', 'distance']) // 'a leg'
 */
export function rowNoun(columns: readonly string[]): string {
  return NOUNS.find(([name]) => columns.includes(name))?.[1] ?? 'a row of the table';
}
