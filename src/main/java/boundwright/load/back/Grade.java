package boundwright.load.back;

/** What a pain means for a way back, mildest first; by the pain limits of the guard, more strictly for a growing athlete. */
public enum Grade {
  /** None, or within what is safe and settled. */
  CLEAN,
  /** Acceptable: the stage goes on, but the day does not count for the next one; so does a pain that nobody asked about next morning. */
  FELT,
  /** Too much, or not settled next morning: one stage back. */
  TOO_MUCH
}
