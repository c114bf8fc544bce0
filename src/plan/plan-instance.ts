/**
 * What a plan is made from, as plain data: JSON, so that it can be sent to a worker and kept. Fields are
 * written as the notebook's columns are, with their unit. The mathematics is in section 7 of the model.
 *
 * Two bikes: a part carries its rider, and each rider has a pack. Parts of the same `stock` take their pieces
 * from the same shelf and the same offers, so that a pack of two may serve both bikes. Like parts that share
 * one spare on the road come in as one part whose calls are pooled already (the demand of both bikes in `need`
 * and in the expected cost); a call names the rider who packs it in `carried_by`, so "carry 1, in the other
 * pack" is a call of its own.
 */
export interface PlanInstance {
  /** The notebook's own currency, for sentences: EUR. */
  readonly money: string;
  /** Whole days from the notebook's "today" to the cut-off; null when there is none. */
  readonly days_to_cut_off: number | null;
  /** An offer must arrive this many days before the cut-off. */
  readonly margin_days: number;
  readonly parts: readonly PlanPart[];
  readonly calls: readonly PlanCall[];
  readonly offers: readonly PlanOffer[];
  readonly suppliers: readonly PlanSupplier[];
  readonly jobs: readonly PlanJob[];
  readonly limits: PlanLimits;
  /** Calls set by hand. One that is not allowed is refused, with its reason; the plan goes on without it. */
  readonly pins: readonly PartCall[];
  readonly forbidden: readonly PartCall[];
}

export interface PartCall {
  readonly part: string;
  readonly call: string;
}

export interface PlanPart {
  readonly name: string;
  /** Whole new pieces on the shelf; parts of one stock share what each has. */
  readonly on_hand: number;
  /** What offers call it, where several parts take the same piece; null: by the part's own name. */
  readonly stock: string | null;
  /** Parts with the same word are changed as a set: all get a new one before the start, or none. */
  readonly set: string | null;
  /** Brakes, tyres, chain, ...: its calls were judged by section 8, and sentences about it say so. */
  readonly critical: boolean;
  /** Whose bike it is on, and whose pack its spares go into. */
  readonly rider: string;
  /** The bag its spares go into; null where the plan may choose one. */
  readonly bag: string | null;
  /** The bag it goes into where there is room, when the plan may choose. */
  readonly rather_bag: string | null;
  /** What one stranding by this part costs now, money; null where there is no such figure. */
  readonly stranding_cost: number | null;
}

/** `keep` is replace and keep the old one as the spare, `way` a change on the way. */
export type CallKind = 'leave' | 'replace' | 'carry' | 'keep' | 'way';

export interface PlanCall {
  readonly part: string;
  /** Unique among the part's calls. Their order settles equal plans: the earlier call wins. */
  readonly name: string;
  readonly kind: CallKind;
  /** The call's expected cost less its cash, money: hours, road, shelf, less what is left over. */
  readonly cost_without_cash: number;
  /** By how much `cost_without_cash` grows when one piece's price does, money per money: 0 if it does not. */
  readonly per_price: number;
  /** By how much it grows when the part's `stranding_cost` does: the strandings to be expected. */
  readonly per_stranding: number;
  /** Whole new pieces of the part, from the shelf or bought. */
  readonly need: number;
  /** Whole pieces of work sent out to a workshop; bought as `workshop` offers, never from the shelf. */
  readonly sent_out: number;
  /** Weight and volume of what is packed: goes into one bag, as one. */
  readonly mass_kg: number;
  readonly volume_L: number;
  /** Whose pack it goes into, where that is not the part's own rider. */
  readonly carried_by: string | null;
  /** Shed hours of this call alone, without the setting up of its jobs. */
  readonly shed_hours: number;
  /** Jobs that must be open for it: their setting up is counted once for all calls. */
  readonly jobs: readonly string[];
  /** Chance that this part strands the trip under this call, 0 to 1. */
  readonly strand_chance: number;
  /** null when the call is allowed; otherwise the sentence that says why it is not (section 8). */
  readonly held_back: string | null;
}

export interface PlanOffer {
  readonly id: string;
  readonly supplier: string;
  readonly part_number: string;
  /** Landed in the notebook's money, of one pack, without freight. */
  readonly price: number;
  /**
   * Pieces of each part, or stock of like parts, in one pack: a pack of two tubes is [['Rear inner tube', 2]];
   * kits have several.
   */
  readonly covers: readonly (readonly [part: string, pieces: number])[];
  readonly kind: 'goods' | 'workshop';
  /** Whole days until it is here, or the work is back; null when it can be had at once. */
  readonly arrives_in_days: number | null;
}

export interface PlanSupplier {
  readonly name: string;
  /** Charged once, when anything is bought there, money. */
  readonly freight: number;
  /** Goods for this sum or more go freight free; null: never. */
  readonly free_from: number | null;
}

/** Work that several calls share, such as taking the rear wheel out. */
export interface PlanJob {
  readonly name: string;
  /** Counted once, however many calls open the job. */
  readonly setup_hours: number;
  /** What these hours cost, money; also counted once. */
  readonly setup_cost: number;
}

/** null is no limit. */
export interface PlanLimits {
  readonly cash: number | null;
  readonly shed_hours: number | null;
  /** Greatest chance that anything strands the trip, 0 to below 1. */
  readonly trip_risk: number | null;
  /** One for each rider who packs anything. */
  readonly packs: readonly PlanPack[];
}

export interface PlanPack {
  readonly rider: string;
  readonly mass_kg: number | null;
  readonly volume_L: number | null;
  /** Packed already, and counted by the limits of the whole pack; a limit on spares alone has 0. */
  readonly packed_kg: number;
  readonly packed_L: number;
  /** Where there are any, all that this rider packs must go into one of them. */
  readonly bags: readonly PlanBag[];
}

export interface PlanBag {
  readonly name: string;
  readonly mass_kg: number | null;
  readonly volume_L: number | null;
  /** In this bag already (camp, cook, water); counts against the bag. */
  readonly packed_kg: number;
  readonly packed_L: number;
}

/** True for the calls that fit a new piece before the start: those that a set has in common. */
export const fitsNew = (call: PlanCall): boolean => call.kind === 'replace' || call.kind === 'keep';

/** By what name offers and the shelf know the part. */
export const stockOf = (part: PlanPart): string => part.stock ?? part.name;

/** The rider whose pack the call's spares go into. */
export const packerOf = (part: PlanPart, call: PlanCall): string => call.carried_by ?? part.rider;
