package boundwright.flight.season;

/** What the coach logs of a rep. */
enum Logging {
  /** Every footprint and the landing. */
  PRINTS,
  /** The landing only. */
  LANDING,
  /** Taps only, from the advised mark where one is promised, else from the learning marks in turn. */
  TAPS,
  /** Every footprint for three weeks, then taps only, always from the best mark. */
  THEN_TAPS,
  /** Likewise, and what the program asks for, see {@link #ASKED}. */
  THEN_ASKED,
  /** As {@link #TAPS}, and what the program asks for: a last footprint or a whole rep measured, or the tape laid elsewhere. */
  ASKED,
  /** The first rep of each block with every footprint, then taps and landings in turn. */
  MIXED
}
