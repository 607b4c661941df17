package boundwright.flight.season;

/** What the coach logs of a rep. */
enum Logging {
  /** Every footprint and the landing. */
  PRINTS,
  /** The landing only. */
  LANDING,
  /** Taps only, from the advised mark where one is promised, else from the learning marks in turn. */
  TAPS,
  /** The first rep of each block with every footprint, then taps and landings in turn. */
  MIXED
}
