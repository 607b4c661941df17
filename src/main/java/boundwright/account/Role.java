package boundwright.account;

/** What somebody is in a club. What a role may do stands in one table of routes; what it sees of a body, in {@link #seesBodies}. */
public enum Role {
  /** Answers for the squad: everything, accounts and backups too. */
  HEAD_COACH("head coach"),
  /** Coaches beside the head coach: everything at the runway, the plan and films; no accounts, no settings. */
  ASSISTANT("assistant"),
  /** Sets and ends holds, sees pain and load; changes nothing of the training. */
  MEDICAL("medical staff"),
  /** One athlete: sees their own pages and tells pain and ratings. */
  ATHLETE("athlete"),
  /** Looks at marks, plan and meets; never at pain, holds, growth, birth dates or films. */
  READER("reader");

  private final String label;

  Role(String label) {
    this.label = label;
  }

  /** As a screen says it. */
  public String label() {
    return label;
  }

  /** Whether pain, holds and growth are shown to this role at all; an athlete sees their own. */
  public boolean seesBodies() {
    return this != READER;
  }
}
