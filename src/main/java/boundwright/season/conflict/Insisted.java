package boundwright.season.conflict;

/** What the coach insists on; meets that are entered for always are. */
public enum Insisted {
  /** The sessions that are wanted of every week. */
  SESSIONS,
  /** The athletes' wishes for single days. */
  WISHES
}
