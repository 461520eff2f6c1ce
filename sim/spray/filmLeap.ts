/**
 * How far films are set ahead between cycles: farther each time, half as far where they begin to swing,
 * so that slow films arrive and quick ones come to rest. The times are our own choice, no source: they change
 * how soon a point settles, not where.
 */
import type { WallFilm } from './wallFilm.ts';

/** Time that films are set ahead by at first, at least and at most [s]. */
const FIRST = 2;
const LEAST = 0.25;
const MOST = 8;
/** Closings from which on a cycle has had all its fuel. */
const WHOLE = 3;

export class FilmLeap {
  /** Valve closings so far. */
  closings = 0;
  private readonly film: WallFilm;
  private ahead = FIRST;
  private last: Float64Array<ArrayBufferLike> = new Float64Array();

  constructor(film: WallFilm) {
    this.film = film;
  }

  /** Sets the film ahead; gives the mass that joins [kg]. */
  make(): number {
    if (this.closings < WHOLE) return 0;
    const gained = this.film.setAhead(this.ahead);
    const along = this.last.reduce((sum, before, k) => sum + before * gained[k]!, 0);
    if (along !== 0)
      this.ahead = along < 0 ? Math.max(this.ahead / 2, LEAST) : Math.min(2 * this.ahead, MOST);
    this.last = gained;
    return gained.reduce((sum, mass) => sum + mass, 0);
  }
}
