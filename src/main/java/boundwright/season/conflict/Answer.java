package boundwright.season.conflict;

/** Whether some choice of the open days keeps all that is demanded. */
public enum Answer {
  /** One was found. */
  FEASIBLE,
  /** All were ruled out. */
  INFEASIBLE,
  /** The search was given up before either; never read as feasible. */
  UNDECIDED
}
