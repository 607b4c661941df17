package boundwright.load;

import boundwright.evidence.Source;

/**
 * What one rule of the guard found.
 *
 * @param rule which rule
 * @param answer what it says
 * @param value the value it looked at
 * @param limit the limit that decided, in the same unit
 * @param unit of both: contacts, hours, standing-bound contacts, steps, of 10
 * @param said a sentence for the coach: value, limit, what would change it
 * @param source where the limit comes from
 */
public record Finding(Rule rule, Answer answer, double value, double limit, String unit, String said, Source source) {
  /** The rules, one method each. */
  public enum Rule {
    /** Contacts in the session. */
    SESSION_CONTACTS("contacts in the session"),
    /** Contacts of a growing athlete. */
    GROWING_CONTACTS("growing athlete: contacts"),
    /** Sessions in seven days of such an athlete. */
    GROWING_SESSIONS("growing athlete: sessions a week"),
    /** Hours since the last hard session. */
    SPACING("spacing of hard sessions"),
    /** Seven days beside the athlete's own weeks. */
    OWN_WEEKS("own weeks"),
    /** A leg on its way back: its stage in place of the weekly rise, the stricter holds. */
    WAY_BACK("way back"),
    /** Nothing to compare seven days with yet. */
    NO_HISTORY("not known yet"),
    /** Rise over the week before, as it was judged before each leg had its account; only in old decisions. */
    RAMP("weekly rise"),
    /** Single-leg series from a long approach. */
    SINGLE_LEG_SERIES("single-leg series"),
    /** What is bounded on. */
    SURFACE("surface"),
    /** Pain. */
    PAIN("pain"),
    /** A sign to stop and refer. */
    REFER("stop and refer"),
    /** Medical hold. */
    MEDICAL_HOLD("medical hold"),
    /** What is not for whoever asks. */
    WITHHELD("not for here");

    private final String label;

    Rule(String label) {
      this.label = label;
    }

    /** The rule in words. */
    public String label() {
      return label;
    }
  }

  /** Whether a coach may decide otherwise with a reason: everything but a medical hold and its signs. */
  public boolean mayBeOverridden() {
    return rule != Rule.MEDICAL_HOLD && rule != Rule.REFER && rule != Rule.WITHHELD;
  }

  /** Whether there was nothing to compare with yet, so that nothing was judged. */
  public boolean notKnownYet() {
    return rule == Rule.NO_HISTORY;
  }

  /** {@link #said} without the limits it was held against: what was found, then what to do. */
  public String brief() {
    int limits = said.indexOf(';');
    if (limits < 0) {
      return said;
    }
    int next = said.indexOf(". ", limits);
    return said.substring(0, limits) + "." + (next < 0 ? "" : said.substring(next + 1));
  }
}
