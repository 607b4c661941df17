package boundwright.pairing;

/** What a paired phone may do. */
public enum PhoneRights {
  /** Reads marks and logs what happens at the runway and in a meet; takes back what was logged there. */
  LOG("may log"),
  /** Everything but letting other phones in. */
  ALL("may change everything");

  private final String label;

  PhoneRights(String label) {
    this.label = label;
  }

  /** As a screen says it. */
  public String label() {
    return label;
  }
}
