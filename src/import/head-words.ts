import { foldWords } from './fold-words.ts';
import type { Role } from './roles.ts';

type Weighted = readonly (readonly [weight: number, words: string])[];

/**
 * Words of column heads in English, German, French, Spanish, Italian, Dutch, Polish, Russian, Swedish, Danish,
 * Finnish, Czech, Portuguese, Japanese and Hebrew, parted by commas. A star stands for more letters of the
 * same word. The weight says how surely the words mean the role.
 */
const WORDS: Readonly<Partial<Record<Role, Weighted>>> = {
  part_number: [
    [
      1,
      'part no, part number, part nr, partno, partnumber, part num, part code, part id, item no, item number, item code, item nr, article no, article number, article nr, article code, art no, art nr, artno, artnr, artikelnummer, artikelnr, artikel nr, artikel no, bestellnummer, bestellnr, bestell nr, best nr, teilenummer, teilenr, teile nr, sachnummer, materialnummer, sku, *sku, product code, product no, product number, stock code, catalogue no, catalog no, catalogue number, order no, order code, reference fournisseur, reference article, reference, n article, no article, numero d article, code article, code produit, numero de pieza, numero de referencia, referencia, codice articolo, cod articolo, codice, artikelcode, bestelnummer, onderdeelnummer, nr katalogowy, numer katalogowy, nr czesci, kod towaru, kod produktu, indeks, артикул, код товара, номер детали, каталожный номер, номер по каталогу, reservdelsnummer, art nummer, varenummer, varenr, delenummer, tuotenumero, tuotekoodi, cislo dilu, katalogove cislo, objednaci cislo, numero da peca, codigo do produto, 商品コード, 品番, 型番, מקט, מספר פריט, mpn, mfr part',
    ],
    [0.75, 'code, codigo, cod, kod, код, koodi, ref, material, articulo no, symbol, bestell*, profil, номер'],
    [0.5, 'id, ean, gtin, upc, issn, isbn, oem, oem no, nr, no, number, art, handle'],
    [0.35, 'barcode, strichcode, code barre, штрихкод'],
  ],
  description: [
    [
      1,
      'description, product description, part description, item description, bezeichnung, artikelbezeichnung, teilebezeichnung, benennung, beschreibung, artikeltext, designation, libelle, descripcion, denominacion, descrizione, denominazione, omschrijving, benaming, nazwa, nazwa towaru, nazwa produktu, opis, наименование*, название, описание, benamning, beskrivning, beskrivelse, betegnelse, kuvaus, nazev, popis, descricao, 商品名, 品名, שם, תיאור, product name, item name, part name, title, *title',
    ],
    [
      0.75,
      'name, desc, item, article, artikel, product, produkt, produit, producto, prodotto, nombre, nome, nom, navn, namn, nimi, tuote, articulo, articolo, intitule, onderdeel, товар, деталь, запчасть, part, teil, piece, pieza, pezzo, bezeichn*, descript*, *template, vare, vara',
    ],
    [0.4, 'collection, text, text 1, details, note, remarks, model name'],
  ],
  price: [
    [
      1,
      'price, unit price, net price, sale price, selling price, your price, dealer price, price net, price each, preis, stuckpreis, einzelpreis, nettopreis, vk preis, verkaufspreis, *preis, prix, prix unitaire, prix net, prix public*, prix ht, prix ttc, pu ht, precio*, pvp, prezzo*, prijs, *prijs, stuksprijs, cena, cena netto, cena detaliczna, цена*, стоимость*, pris, *pris, nettopris, hinta, preco*, 単価, 価格, 販売価格, מחיר, unit charge, variant price, fixed price, discounted price, real price, special price',
    ],
    [0.7, 'list, list price, catalogue price, tarif, charge, netto, pu, each'],
    [0.55, 'uvp, rrp, msrp, mrp, brutto, price list'],
    [0.45, 'cost, amount, rate, betrag, montant, importe, value, kost*'],
  ],
  currency: [
    [
      1,
      'currency, curr, ccy, currency code, waehrung, wahrung, devise, monnaie, moneda, divisa, valuta, waluta, валюта, valuutta, mena, moeda, 通貨, מטבע',
    ],
  ],
  pack_quantity: [
    [
      1,
      'pack, pack size, pack qty, pack quantity, per pack, qty in pack, qty per pack, quantity per pack, packing unit, package quantity, package qty, pieces per pack, pcs per pack, units per pack, units, ve, vpe, verpackungseinheit, packungseinheit, packungsgrosse, packungsinhalt, inhalt, gebinde, colisage, collisage, conditionnement, unites par lot, unidad de embalaje, unidades por paquete, embalaje, confezione, pezzi per confezione, verpakking, per verpakking, verpakkingseenheid, aantal per verpakking, opakowanie, w opakowaniu, ilosc w opakowaniu, b w paczce, w paczce, упаковка, в упаковке, кратность, forpackning, antal per forpackning, pakning, antal pr pakke, pakkauskoko, pakkaus, baleni, embalagem, 入数',
    ],
    [0.5, 'pcs, pieces, stk, stuck, szt, шт, lot'],
  ],
  discount: [
    [
      1,
      'discount, disc, trade discount, rebate, rabatt, *rabatt, remise, descuento, dto, sconto, korting, rabat, скидка, alennus, sleva, desconto, percent off, 割引',
    ],
  ],
  lead_time: [
    [
      1,
      'lead time, lead, leadtime, delivery time, delivery days, delivery, ships in, dispatch, dispatch time, lieferzeit, lieferfrist, delai, delai de livraison, livraison, plazo, plazo de entrega, entrega, tempi di consegna, consegna, levertijd, levering, termin dostawy, czas dostawy, dostawa, termin realizacji, срок поставки, срок доставки, срок, leveranstid, leveringstid, toimitusaika, dodaci lhuta, doba dodani, prazo, prazo de entrega, 納期',
    ],
    [0.4, 'days, tage, wait, availability'],
  ],
  supplier: [
    [
      1,
      'supplier, vendor, lieferant, fournisseur, proveedor, fornitore, leverancier, dostawca, поставщик, leverantor, leverandor, toimittaja, dodavatel, fornecedor, 仕入先, ספק, supplier name, vendor name',
    ],
    [
      0.5,
      'manufacturer, maker, brand, hersteller, marke, fabricant, marque, fabricante, marca, produttore, merk, producent, производитель, shop, seller',
    ],
  ],
  fits: [
    [
      1,
      'fits, fits part, fitment, fit, application, applications, for model, for models, passend fur, passt zu, passend, verwendung, fahrzeug, convient a, pour modele, compatible*, aplicacion, applicazione, geschikt voor, past op, pasuje do, zastosowanie, применяемость, подходит для, подходит, passar till, passar, passer til, sopii, pouziti, aplicacao, part it fits, used on, vehicle, bike',
    ],
    [0.6, 'model, models, modell, modele, modelo, modello, модель, vehicule, veicolo'],
  ],
  stock: [
    [
      1,
      'stock, in stock, on hand, stock qty, stock level, qty available, quantity available, available, bestand, lagerbestand, verfugbar, verfugbarkeit, dispo, disponible, disponibilite, existencias, giacenza, disponibilita, voorraad, stan magazynowy, stan, dostepnosc, наличие, остаток, остатки, lagersaldo, saldo, pa lager, varasto, varastossa, skladem, estoque, 在庫, *inventory qty, vorrat, i lager',
    ],
    [0.5, 'inventory, lager, sklad, склад'],
  ],
  unit: [
    [
      1,
      'unit, uom, um, unit of measure, einheit, mengeneinheit, me, unite, unite de mesure, unidad, unidad de medida, unita, unita di misura, eenheid, jm, j m, jednostka, ед изм, единица, ед, enhet, enhed, yksikko, jednotka, unidade, 単位, price unit of measure',
    ],
    [0.5, 'per'],
  ],
  price_for: [
    [1, 'preiseinheit, pe, price unit, price per, price basis, prix par, priseenhet, preis pro, per qty'],
  ],
  from_quantity: [
    [
      1,
      'from quantity, from qty, min qty, min quantity, minimum quantity, quantity from, qty from, qty break, quantity break, break qty, price break, scale, scale quantity, ab menge, staffel, staffelmenge, ab stuck, mindestmenge, a partir de, qte min, quantite min, desde cantidad, cantidad minima, quantita minima, vanaf, vanaf aantal, od ilosci, ilosc od, min ilosc, от количества, количество от, fran antal, fra antal, items min quantity',
    ],
    [0.55, 'menge, min, moq, ab, from'],
  ],
  tax: [
    [
      1,
      'vat, tax, tax rate, vat rate, mwst, mw st, ust, steuersatz, steuer, tva, iva, btw, moms, ндс, gst, sales tax, vat code, stawka vat, dph, alv',
    ],
  ],
};

/** Words in a head that speak against a role, and how much. */
const AGAINST: Readonly<Partial<Record<Role, Weighted>>> = {
  price: [
    [
      0.9,
      'total, line total, sum, summe, gesamt*, subtotal, tax, vat, mwst, deposit, pfand, shipping, freight, fracht, discount, rabatt, date, code, id, currency, per, unit of measure, von, bis, valid, gultig, group, liste',
    ],
    [
      0.5,
      'old, alt, was, previous, compare*, ek*, einkauf*, purchase, wholesale, опт, оптовая, buying, cost, cost per item, aktion*, action',
    ],
    [0.2, 'promo, promotion, ramie, gross'],
  ],
  part_number: [
    [
      0.7,
      'group, gruppe, category, tax, postal, zip, colour, color, collection, discount, price, fournisseur, supplier, customer, country, currency, koli*, pos, old, couleur, race, order qty',
    ],
  ],
  description: [
    [0.5, 'group, category, type, html, url, link, image, seo, number, no, nr, code, id, price, 2'],
  ],
  pack_quantity: [[0.5, 'min, price, total, preis, stock, available, order, on hand, lager']],
  unit: [
    [0.6, 'price, charge, cost'],
    [1.5, 'weight, gewicht, poids, peso, length, size, volume, dimension*'],
  ],
  fits: [[0.5, 'name, number, no']],
  supplier: [[0.6, 'no, nr, code, id, number, price']],
  lead_time: [[0.5, 'date, cost, price, charge']],
};

interface Compiled {
  readonly weight: number;
  readonly words: string;
  readonly pattern: RegExp;
}

/** Words as a pattern over a folded head; Japanese and Hebrew are not parted by spaces as ours are. */
function compile(list: Weighted | undefined): readonly Compiled[] {
  return (list ?? []).flatMap(([weight, texts]) =>
    texts.split(',').map((text) => {
      const starsBefore = text.trim().startsWith('*');
      const starsAfter = text.trim().endsWith('*');
      const words = foldWords(text.replaceAll('*', ''));
      const isUnparted = /[\u3040-\u9fff\u0590-\u05ff]/.test(words);
      const before = starsBefore || isUnparted ? '' : '(?:^| )';
      const after = starsAfter || isUnparted ? '' : '(?: |$)';
      return { weight, words, pattern: new RegExp(before + words + after) };
    }),
  );
}

const entriesOf = (
  lists: Readonly<Partial<Record<Role, Weighted>>>,
): ReadonlyMap<Role, readonly Compiled[]> =>
  new Map((Object.keys(lists) as Role[]).map((role) => [role, compile(lists[role])]));

const forRole = entriesOf(WORDS);
const againstRole = entriesOf(AGAINST);

export interface HeadScore {
  /** At most 1; below 0 where words speak against the role and none for it. */
  readonly score: number;
  /** The words that were found. */
  readonly words: string;
}

/**
 * How far the words of a head speak for a role: its known words, whole heads more than part of one, less what
 * speaks against it.
 *
 * @param folded the head through foldWords
 * @example scoreHead('artikel nr', 'part_number') // { score: 1, words: 'artikel nr' }
 */
export function scoreHead(folded: string, role: Role): HeadScore {
  // Numbers at the end tell doubled heads apart: 'ref 1', 'artikeltext1'.
  const bare = folded.replace(/ ?\d+$/, '') || folded;
  let best: HeadScore = { score: 0, words: '' };
  let longest = 0;
  for (const { weight, words, pattern } of forRole.get(role) ?? []) {
    const text = pattern.test(folded) ? folded : bare;
    if (!pattern.test(text)) continue;
    const cover = Math.min(1, words.length / text.length);
    // Short weak words ('no', 'pcs') mean little inside a longer head.
    const score = weight * (text === words ? 1 : (weight <= 0.5 ? 0.5 : 0.7) + 0.25 * cover);
    if (score > best.score) best = { score, words };
    longest = Math.max(longest, words.length);
  }
  let against = 0;
  for (const { weight, words, pattern } of againstRole.get(role) ?? []) {
    // 'price unit' is spoken for as a whole: its parts do not speak against it.
    if (words.length <= longest && best.words.includes(words)) continue;
    if (pattern.test(folded)) against = Math.max(against, weight);
  }
  return { score: best.score - against, words: best.words };
}

const memory = new Map<string, { readonly role: Role; readonly score: number } | null>();

/** The role that a head speaks for most; null when it says nothing known. */
export function likelyRole(folded: string): { readonly role: Role; readonly score: number } | null {
  const held = memory.get(folded);
  if (held !== undefined) return held;
  let best: { role: Role; score: number } | null = null;
  for (const role of forRole.keys()) {
    const { score } = scoreHead(folded, role);
    if (score >= 0.4 && score > (best?.score ?? 0)) best = { role, score };
  }
  if (memory.size > 5000) memory.clear();
  memory.set(folded, best);
  return best;
}
