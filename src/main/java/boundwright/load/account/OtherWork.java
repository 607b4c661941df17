package boundwright.load.account;

import boundwright.athlete.Athlete;
import boundwright.footfall.Foot;
import boundwright.quantity.Decimals;
import boundwright.quantity.RefusedException;
import java.time.LocalDate;

/**
 * What the legs did beside bounding and jumping, entered in two taps.
 *
 * @param id number in the store, 0 before it is stored
 * @param athleteId whose
 * @param date the day
 * @param kind what was done
 * @param amount how much, in the kind's unit
 * @param grade approach steps of bounds, 0 to 26; box height [m] of boxes, 0.05 to 1.2; rating 0 to 10 of sport; 0 otherwise
 */
public record OtherWork(long id, long athleteId, LocalDate date, Kind kind, double amount, double grade) {
  /** What was done, with its unit and range (sanity limits; judgement). */
  public enum Kind {
    /** Alternate bounds that nobody logged one by one, by the approach steps. */
    BOUNDS("bounds not logged one by one", "contacts", 1, 400),
    /** Sprints: metres at speed. */
    SPRINT("sprints", "m", 10, 5000),
    /** Weights for the legs: sets. */
    WEIGHTS("weights", "sets", 1, 60),
    /** Landings and jumps on two feet from or onto a box. */
    BOXES("boxes", "contacts", 1, 400),
    /** School sport, ball games, other running: minutes, with a rating. */
    SPORT("other sport", "minutes", 5, 600);

    private final String label;
    private final String unit;
    private final double least;
    private final double most;

    Kind(String label, String unit, double least, double most) {
      this.label = label;
      this.unit = unit;
      this.least = least;
      this.most = most;
    }

    /** In words. */
    public String label() {
      return label;
    }

    /** Of the amount. */
    public String unit() {
      return unit;
    }
  }

  /** Refuses what nobody does in a day. */
  public OtherWork {
    if (!(amount >= kind.least && amount <= kind.most)) {
      throw new RefusedException(
          number(amount) + " " + kind.unit + " of " + kind.label + " are out of range: " + number(kind.least) + " to " + number(kind.most)
              + " in one entry. Enter what was done today.");
    }
    if (kind == Kind.BOUNDS) {
      grade = Athlete.checkSteps((int) Math.round(grade));
    }
    if (kind == Kind.BOXES && !(grade >= 0.05 && grade <= 1.2)) {
      throw new RefusedException("A box of " + number(grade) + " m is out of range: 0.05 to 1.2 m. Enter its height in metres.");
    }
    if (kind == Kind.SPORT && !(grade >= 0 && grade <= 10)) {
      throw new RefusedException("A rating of " + number(grade) + " is out of range: 0 (rest) to 10 (as hard as can be).");
    }
    if (kind == Kind.SPRINT || kind == Kind.WEIGHTS) {
      grade = 0;
    }
  }

  /** The same with the number the store gave. */
  public OtherWork withId(long stored) {
    return new OtherWork(stored, athleteId, date, kind, amount, grade);
  }

  /** Jump contacts in the sense of the handbooks: bounds and boxes. Sprint steps and ball games never enter them. */
  public int jumpContacts() {
    return kind == Kind.BOXES || kind == Kind.BOUNDS ? (int) Math.round(amount) : 0;
  }

  /** Jump contacts of one leg: bounds are shared, a landing on two feet counts for each. */
  public int jumpContacts(Foot foot) {
    int all = jumpContacts();
    return kind == Kind.BOUNDS ? (foot == Foot.RIGHT ? (all + 1) / 2 : all / 2) : all;
  }

  /** What was done, in a few words. */
  public String said() {
    String how =
        switch (kind) {
          case BOUNDS -> grade == 0 ? " from standing" : " from " + number(grade) + " steps";
          case BOXES -> " of " + number(grade) + " m";
          case SPORT -> " rated " + number(grade);
          case SPRINT, WEIGHTS -> "";
        };
    return kind.label + ": " + number(amount) + " " + kind.unit + how;
  }

  private static String number(double x) {
    return x == Math.rint(x) ? Decimals.fixed(x, 0) : Decimals.fixed(x, 2).replaceAll("0$", "");
  }
}
