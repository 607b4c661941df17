package boundwright.phone;

import boundwright.athlete.Athlete;
import boundwright.athlete.Surface;
import boundwright.flight.Outcome;
import boundwright.flight.Rep;
import boundwright.footfall.Sequence;
import boundwright.quantity.RefusedException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One thing that a coach tapped on a phone, with an identity and a time of its own. Written in one line, see {@link #line}; the same line
 * is kept on the phone and sent to the server.
 *
 * @param token 32 hexadecimal digits in small letters, made on the phone when it was tapped; it never stands for anything else
 * @param kind what was tapped
 * @param athleteId whose rep it is; of a rep that is handed over, whose it was
 * @param atMs when, by the phone's clock [ms since 1970]
 * @param offsetMs the server's clock less the phone's, as last measured [ms]
 * @param did what was done; of {@link Kind#REP} only, else null
 * @param of the rep that is meant: the token with which it was tapped, or its number in decimal; empty of {@link Kind#REP}
 * @param to to whom the rep is handed; 0 unless {@link Kind#HAND}
 * @param looked whether the technique was looked at; of {@link Kind#REP} and {@link Kind#LOOK}
 * @param faults what was seen wrong, as {@code key} or {@code key@contact}; empty means clean if it was looked at
 */
public record Entry(
    String token,
    Kind kind,
    long athleteId,
    long atMs,
    long offsetMs,
    @Nullable Did did,
    String of,
    long to,
    boolean looked,
    List<String> faults) {

  /** What was tapped. */
  public enum Kind {
    /** A rep was done. */
    REP,
    /** A rep is taken back. */
    UNDO,
    /** A rep was another athlete's. */
    HAND,
    /** What the coach saw of a rep, said afterwards. */
    LOOK
  }

  /**
   * What was done in a rep; lengths as in {@link Rep}.
   *
   * @param sequence contacts in order, as the coach writes them
   * @param steps approach steps, 0 to 26
   * @param surface what was bounded on
   * @param outcome the tap, or null
   * @param mark_m where the tape lay, to the near edge of the sand [m], or null
   * @param landing_m the landing from the mark [m], or null
   * @param prints_m positions of contacts 2, 3, ... from the mark [m]; NaN where one was not seen
   * @param after the last contact that was made of an abandoned rep, or null
   */
  public record Did(
      Sequence sequence,
      int steps,
      Surface surface,
      @Nullable Outcome outcome,
      @Nullable Double mark_m,
      @Nullable Double landing_m,
      List<Double> prints_m,
      @Nullable Integer after) {
    /** Takes a copy. */
    public Did {
      Athlete.checkSteps(steps);
      prints_m = List.copyOf(prints_m);
    }
  }

  /** Longest line that is taken [characters]. */
  public static final int MAX_LINE = 4000;
  /** Times between 2000 and 2100, by any clock [ms since 1970]. */
  private static final long LEAST_MS = 946_684_800_000L;
  private static final long MOST_MS = 4_102_444_800_000L;
  /** How far two clocks may be apart, ten years [ms]. */
  private static final long MOST_OFFSET_MS = 315_360_000_000L;
  private static final int MOST_FAULTS = 40;

  /** Refuses what cannot have been tapped, in a sentence. */
  public Entry {
    faults = List.copyOf(faults);
    if (!token.matches("[0-9a-f]{32}")) {
      throw new RefusedException("This tap has no token of 32 hexadecimal digits, so it could count twice. Nothing was taken; reload the page and tap again.");
    }
    if (athleteId < 1 || (kind == Kind.HAND ? to < 1 || to == athleteId : to != 0)) {
      throw new RefusedException(
          "This tap says nobody, or the same athlete twice (" + athleteId + (to == 0 ? "" : " and " + to) + "). Choose the athlete and tap again.");
    }
    if ((did != null) != (kind == Kind.REP)) {
      throw new RefusedException("This tap does not say what was done. Reload the page and tap again.");
    }
    if (kind == Kind.REP ? !of.isEmpty() : !of.matches("[0-9a-f]{32}|[1-9]\\d{0,17}")) {
      throw new RefusedException("This tap does not say which rep it means: '" + (of.length() > 40 ? of.substring(0, 40) : of) + "'. Reload the page and tap again.");
    }
    if (faults.size() > MOST_FAULTS) {
      throw new RefusedException("A rep with " + faults.size() + " faults is out of range: 0 to " + MOST_FAULTS + ". Tick those that matter.");
    }
    if (!faults.isEmpty() && (kind == Kind.UNDO || kind == Kind.HAND)) {
      throw new RefusedException("Faults belong to a rep or to a look at one. Reload the page and tap again.");
    }
    if (did != null) {
      rep(did, athleteId, LocalDate.ofEpochDay(0), looked, faults);
    }
  }

  /** The rep that was tapped, dated by {@link #day}; its number is 0. */
  public Rep rep(LocalDate date) {
    if (did == null) {
      throw new IllegalStateException("only a rep has one: " + kind);
    }
    return rep(did, athleteId, date, looked, faults);
  }

  private static Rep rep(Did did, long athlete, LocalDate date, boolean looked, List<String> faults) {
    return new Rep(
        0, athlete, date, did.sequence, did.steps, did.surface, did.prints_m, did.landing_m, did.outcome, did.after, did.mark_m, looked, faults);
  }

  /** When it was tapped, by the server's clock as far as the phone knew it. */
  public Instant at() {
    return Instant.ofEpochMilli(atMs + offsetMs);
  }

  /** The day on which it was tapped where the coach stands. */
  public LocalDate day(ZoneOffset zone) {
    return at().atOffset(zone).toLocalDate();
  }

  /** The entry as one line of {@code key=value&key=value}; {@link #parse} reads it back. */
  public String line() {
    Fields out = new Fields("entry");
    out.put("v", 1).put("token", token).put("kind", kind.name()).put("athleteId", athleteId).put("atMs", atMs).put("offsetMs", offsetMs);
    if (did != null) {
      out.put("sequence", did.sequence.text()).put("steps", did.steps).put("surface", did.surface.name());
      out.put("outcome", did.outcome == null ? null : did.outcome.name()).put("mark_m", did.mark_m).put("landing_m", did.landing_m);
      out.put("prints", Fields.reals(did.prints_m)).put("after", did.after);
    }
    if (!of.isEmpty()) {
      out.put("of", of);
    }
    if (to != 0) {
      out.put("to", to);
    }
    if (kind == Kind.REP || kind == Kind.LOOK) {
      out.put("looked", looked ? "yes" : "no").put("faults", faults.isEmpty() ? null : String.join(",", faults));
    }
    return out.line();
  }

  /**
   * Reads a line. {@code v}, {@code offsetMs}, {@code looked} and what a kind does not need may be missing; empty is as missing.
   *
   * @throws RefusedException if it is no entry, in a sentence that names what is wrong
   */
  public static Entry parse(String line) {
    if (line.length() > MAX_LINE) {
      throw new RefusedException("An entry of " + line.length() + " characters is too long: at most " + MAX_LINE + ". Nothing was taken from it.");
    }
    Fields in = Fields.read("entry", line);
    if (!in.textOr("v", "1").equals("1")) {
      throw in.broken("it is of version " + in.text("v") + ", and this program reads version 1");
    }
    Kind kind = in.one("kind", Kind.values());
    boolean says = kind == Kind.REP || kind == Kind.LOOK;
    return new Entry(
        in.text("token"),
        kind,
        in.whole("athleteId", 1, Long.MAX_VALUE),
        in.whole("atMs", LEAST_MS, MOST_MS),
        filled(in, "offsetMs") ? in.whole("offsetMs", -MOST_OFFSET_MS, MOST_OFFSET_MS) : 0,
        kind == Kind.REP ? did(in) : null,
        kind == Kind.REP ? "" : in.text("of"),
        kind == Kind.HAND ? in.whole("to", 1, Long.MAX_VALUE) : 0,
        says && filled(in, "looked") && in.yes("looked"),
        says ? in.words("faults") : List.of());
  }

  private static boolean filled(Fields in, String key) {
    return !in.textOr(key, "").isEmpty();
  }

  private static Did did(Fields in) {
    return new Did(
        Sequence.parse(in.text("sequence")),
        (int) in.whole("steps", 0, Athlete.MAX_STEPS),
        in.one("surface", Surface.values()),
        filled(in, "outcome") ? in.one("outcome", Outcome.values()) : null,
        filled(in, "mark_m") ? in.realOrNull("mark_m") : null,
        filled(in, "landing_m") ? in.realOrNull("landing_m") : null,
        in.reals("prints"),
        filled(in, "after") ? (Integer) (int) in.whole("after", 1, Sequence.MAX_CONTACTS) : null);
  }
}
