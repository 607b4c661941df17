package boundwright.web.door;

import boundwright.pairing.PhoneRights;

/** What somebody needs to be let in at a route. */
public enum Right {
  /** Nothing: how to pair, how to trust, and what those pages are drawn with. */
  OPEN,
  /** A paired phone. */
  LOG,
  /** A paired phone that may change everything. */
  ALL,
  /** The machine itself. */
  LAPTOP;

  /** Whether a phone with these rights is let in. */
  public boolean isIn(PhoneRights rights) {
    return this == OPEN || this == LOG || (this == ALL && rights == PhoneRights.ALL);
  }
}
