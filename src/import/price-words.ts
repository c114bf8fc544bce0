import { foldText } from './fold-words.ts';

/** Words that stand where a price should, folded: the supplier wants to be asked. */
const ON_REQUEST =
  /^(?:p ?o ?a|poa|price on (?:application|request|enquiry|inquiry)|on (?:request|application|enquiry)|ask|ask us|call|call us|call for price|please (?:call|ask|enquire)|enquire|quote|request a quote|to be quoted|auf anfrage|preis auf anfrage|a a|anfragen|bitte anfragen|tagespreis|sur demande|prix sur demande|nous consulter|sur devis|consultar|a consultar|bajo (?:consulta|pedido)|precio a consultar|consulte|a richiesta|su richiesta|prezzo a richiesta|da quotare|op aanvraag|prijs op aanvraag|na zapytanie|cena na zapytanie|do uzgodnienia|zapytaj|по запросу|цена по запросу|договорная|уточняйте|уточнить|pa forfragan|pris pa forfragan|pa foresporsel|pa foresporgsel|forfragan|kysy|kysy hintaa|tarjous|na dotaz|na vyzadani|sob consulta|a combinar|要問合せ|お問い合わせ|応相談)$/;

/** Words and signs that say there is no price. */
const NONE =
  /^(?:n ?a|n ?v ?t|k ?a|not available|not listed|none|no price|unpriced|t ?b ?[acd]|to be (?:confirmed|advised|announced)|discontinued|deleted|obsolete|no longer available|entfallt|entfallen|nicht lieferbar|ausverkauft|kein preis|keine angabe|non disponible|supprime|epuise|no disponible|agotado|sin precio|non disponibile|esaurito|niet leverbaar|vervallen|brak|brak ceny|niedostepny|wycofany|нет|нет цены|нет в наличии|снят|снято с производства|цена не указана|не указана|utgatt|utgar|saknas|udgaet|poistunut|ei saatavilla|neni|vyprodano|indisponivel|esgotado|free|gratis|null|nan|nil|x+)$/;

const SIGNS_ONLY = /^[\s\-–—−_.…*?#/x×]+$/;

export type PriceWord = 'on-request' | 'no-price' | 'sheet-error' | null;

/**
 * What words in a price field mean; null when they are no known ones.
 *
 * @example priceWord('P.O.A.') // 'on-request'
 * @example priceWord('–') // 'no-price'
 */
export function priceWord(text: string): PriceWord {
  if (
    /^#[^\s\d]+[!?]?$/.test(text) &&
    /^#(?:N\/A|NV|VALUE!|WERT!|REF!|BEZUG!|DIV\/0!|NAME\?|NUM!|ZAHL!|NULL!|.*!|.*\?)$/.test(text)
  ) {
    return 'sheet-error';
  }
  if (SIGNS_ONLY.test(text)) return 'no-price';
  const folded = foldText(text);
  if (ON_REQUEST.test(folded)) return 'on-request';
  return NONE.test(folded) ? 'no-price' : null;
}

const TOTAL =
  /^(?:grand total|total|totals|sub ?total|sum|summe|gesamt|gesamtsumme|gesamtbetrag|zwischensumme|endsumme|total general|total ht|total ttc|totale|suma|razem|ogolem|итого|всего|сумма|totaal|summa|totalt|sum total|yhteensa|celkem|soma|合計|小計|סה כ)(?: (?:net|netto|brutto|gross|eur|usd|gbp|excl|incl|vat|pcs|ht|ttc|items|positions|positionen).*)?$/;

/** Is a field the word for a total? */
export function isTotalWord(text: string): boolean {
  return text.length <= 40 && TOTAL.test(foldText(text));
}
