import { SaxesParser, type SaxesTagPlain } from 'saxes';
import { showCount } from '../../formula/show.ts';

/** A place on the earth, WGS84, degrees. */
export interface Place {
  readonly latitude: number;
  readonly longitude: number;
  /** null where the file gives none. */
  readonly name: string | null;
}

/** A track or a route of a GPX file. */
export interface Way {
  readonly kind: 'track' | 'route';
  readonly name: string | null;
  /** A route has one; a track has one for each stretch that was recorded without a gap. */
  readonly segments: readonly (readonly Place[])[];
}

export interface Gpx {
  readonly ways: readonly Way[];
  readonly waypoints: readonly Place[];
  /** Points left out for having no sound place, with the line of the file. */
  readonly remarks: readonly string[];
}

/** Most signs of a file: a track of a million points has about 100 MB. */
const MOST_SIGNS = 60_000_000;
const MOST_POINTS = 1_000_000;

/**
 * Reads the tracks, routes and waypoints of a GPX 1.1 file (topografix.com/GPX/1/1). A document type, by which
 * a file could define texts that grow without bounds, is refused.
 *
 * @returns the ways and waypoints, or a sentence on what is wrong and where
 * @example readGpx('<gpx version="1.1"><wpt lat="10" lon="20"><name>Ash Siding</name></wpt></gpx>').waypoints
 * // [{ latitude: 10, longitude: 20, name: 'Ash Siding' }]
 */
export function readGpx(text: string): Gpx | { readonly refusal: string } {
  if (text.length > MOST_SIGNS) {
    return {
      refusal: `The file has ${showCount(text.length)} signs; at most ${showCount(MOST_SIGNS)} can be brought in. Export fewer points.`,
    };
  }
  if (/<!DOCTYPE/i.test(text)) {
    return {
      refusal:
        'The file has a document type (DOCTYPE), which no GPX file needs. Export it anew as plain GPX 1.1.',
    };
  }
  const reader = new GpxReader();
  try {
    reader.read(text);
  } catch (error) {
    if (!(error instanceof GpxError)) throw error;
    return { refusal: error.message };
  }
  const { ways, waypoints, remarks } = reader;
  if (ways.length === 0 && waypoints.length === 0) {
    return {
      refusal:
        'The file has no track, no route and no waypoint in it. Choose a file that was exported as a GPX track or route.',
    };
  }
  return { ways, waypoints, remarks };
}

class GpxError extends Error {}

interface OpenPlace {
  readonly tag: string;
  readonly latitude: number;
  readonly longitude: number;
  name: string | null;
}

/** Gathers ways from the tags as they come; extensions inside them are passed over. */
class GpxReader {
  readonly ways: Way[] = [];
  readonly waypoints: Place[] = [];
  readonly remarks: string[] = [];
  private readonly open: string[] = [];
  private way: { kind: 'track' | 'route'; name: string | null; segments: Place[][] } | null = null;
  private place: OpenPlace | null = null;
  private text = '';
  private points = 0;
  private left = 0;

  read(text: string): void {
    const parser = new SaxesParser({ position: true, xmlns: false });
    parser.on('error', (error) => {
      const line = /^(?:undefined:)?(\d+):/.exec(error.message)?.[1] ?? String(parser.line);
      throw new GpxError(`Line ${line} is not sound XML, so the file cannot be read as GPX. Export it anew.`);
    });
    parser.on('opentag', (tag) => this.openTag(tag, parser.line));
    parser.on('text', (part) => {
      this.text += part;
    });
    parser.on('cdata', (part) => {
      this.text += part;
    });
    parser.on('closetag', ({ name }) => this.closeTag(bareName(name)));
    parser.write(text).close();
    if (this.left > 0)
      this.remarks.push(
        `${showCount(this.left)} points have no sound latitude and longitude and are left out.`,
      );
  }

  private openTag(tag: SaxesTagPlain, line: number): void {
    const name = bareName(tag.name);
    if (this.open.length === 0 && name !== 'gpx') {
      throw new GpxError(`The file begins with <${name.slice(0, 30)}>, not with <gpx>: it is no GPX file.`);
    }
    const parent = this.open[this.open.length - 1];
    this.open.push(name);
    this.text = '';
    if (parent === 'gpx' && (name === 'trk' || name === 'rte')) {
      this.way = {
        kind: name === 'trk' ? 'track' : 'route',
        name: null,
        segments: name === 'trk' ? [] : [[]],
      };
    } else if (parent === 'trk' && name === 'trkseg') this.way?.segments.push([]);
    else if (isPoint(parent, name)) this.openPlace(tag, name, line);
  }

  private openPlace(tag: SaxesTagPlain, name: string, line: number): void {
    this.points += 1;
    if (this.points > MOST_POINTS) {
      throw new GpxError(
        `Line ${line}: the file has more than ${showCount(MOST_POINTS)} points. Export fewer.`,
      );
    }
    const latitude = degrees(tag.attributes.lat, 90);
    const longitude = degrees(tag.attributes.lon, 180);
    if (latitude === null || longitude === null) this.left += 1;
    else this.place = { tag: name, latitude, longitude, name: null };
  }

  private closeTag(name: string): void {
    this.open.pop();
    const parent = this.open[this.open.length - 1];
    if (name === 'name') this.nameIt(parent);
    else if (this.place !== null && this.place.tag === name) this.closePlace(this.place);
    else if ((name === 'trk' || name === 'rte') && parent === 'gpx' && this.way !== null) {
      const segments = this.way.segments.filter((segment) => segment.length > 0);
      if (segments.length > 0) this.ways.push({ ...this.way, segments });
      this.way = null;
    }
  }

  private nameIt(parent: string | undefined): void {
    const name = this.text.replace(/\s+/g, ' ').trim().slice(0, 200) || null;
    if (this.place !== null && parent === this.place.tag) this.place.name = name;
    else if (this.way !== null && (parent === 'trk' || parent === 'rte')) this.way.name = name;
  }

  private closePlace({ tag, latitude, longitude, name }: OpenPlace): void {
    const place: Place = { latitude, longitude, name };
    if (tag === 'wpt') this.waypoints.push(place);
    else this.way?.segments[this.way.segments.length - 1]?.push(place);
    this.place = null;
  }
}

/** A tag's name without its namespace's prefix. */
function bareName(name: string): string {
  return name.slice(name.indexOf(':') + 1);
}

function isPoint(parent: string | undefined, name: string): boolean {
  return (
    (name === 'wpt' && parent === 'gpx') ||
    (name === 'rtept' && parent === 'rte') ||
    (name === 'trkpt' && parent === 'trkseg')
  );
}

function degrees(text: string | undefined, most: number): number | null {
  if (text === undefined || !/^\s*[-+]?\d{1,3}(?:\.\d+)?\s*$/.test(text)) return null;
  const figure = Number(text);
  return Math.abs(figure) <= most ? figure : null;
}
