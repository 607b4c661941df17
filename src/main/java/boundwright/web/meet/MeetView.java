package boundwright.web.meet;

import boundwright.athlete.Athlete;
import boundwright.jump.MeasureRule;
import boundwright.meet.Attempt;
import boundwright.meet.Beside;
import boundwright.meet.Combined;
import boundwright.meet.Entrant;
import boundwright.meet.KeptAttempt;
import boundwright.meet.Meet;
import boundwright.meet.MeetAim;
import boundwright.meet.MeetNow;
import boundwright.meet.Placing;
import boundwright.meet.RivalMeaning;
import boundwright.meet.Wind;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.Notes;
import boundwright.web.page.Figures;
import boundwright.web.page.Sent;
import java.time.Clock;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * One meet as it goes.
 *
 * @param now how it stands
 * @param unit the coach's unit
 * @param squad everybody of the squad
 * @param chosen of ours, whose next attempt is looked at, or null with none of ours on the list
 * @param aim what that attempt is for, or null with {@code chosen}
 * @param sent a refused form, or nothing
 * @param token makes a double tap one attempt
 * @param said what happened with the last tap, or null
 * @param besides what another phone entered and the coach has to choose about
 * @param clock of the program
 */
public record MeetView(
    MeetNow now,
    LengthUnit unit,
    List<Athlete> squad,
    @Nullable Athlete chosen,
    @Nullable MeetAim aim,
    Sent sent,
    String token,
    @Nullable Said said,
    List<Beside> besides,
    Clock clock) {
  private static final DateTimeFormatter OF_DAY = DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ROOT);

  /**
   * What happened with the last tap.
   *
   * @param sentence for the coach
   * @param undo number of the attempt that can be taken back, or null
   */
  public record Said(String sentence, @Nullable Long undo) {}

  /** Where the meet's forms are sent. */
  public String address() {
    return "/meet/" + now.sheet().id();
  }

  /** Rounds of the meet, 1 to n. */
  public List<Integer> rounds() {
    List<Integer> out = new ArrayList<>();
    for (int r = 1; r <= now.sheet().rules().rounds(); r++) {
      out.add(r);
    }
    return out;
  }

  /** The round that the form asks for. */
  public String formRound() {
    Integer round = now.round();
    return sent.field("round", String.valueOf(round == null ? now.sheet().rules().rounds() : round));
  }

  /** Everybody whom the form offers: first those of the round in its order, then the others. */
  public List<Entrant> offered() {
    List<Entrant> out = new ArrayList<>();
    for (String name : now.order()) {
      now.sheet().entrant(name).ifPresent(out::add);
    }
    for (Entrant e : now.sheet().entrants()) {
      if (!out.contains(e)) {
        out.add(e);
      }
    }
    return out;
  }

  /** Whether the form is for this one. */
  public boolean isAsked(Entrant entrant) {
    String asked = sent.field("entrant", "");
    return asked.isEmpty() ? entrant.name().equals(now.next()) : asked.equals(String.valueOf(entrant.id()));
  }

  /** Those of the squad who are on the list, in its order. */
  public List<Athlete> ours() {
    List<Athlete> out = new ArrayList<>();
    for (Entrant e : now.sheet().entrants()) {
      squad.stream().filter(a -> Long.valueOf(a.id()).equals(e.athleteId())).forEach(out::add);
    }
    return out;
  }

  /** Those of the squad who are not on the list. */
  public List<Athlete> others() {
    List<Athlete> out = new ArrayList<>(squad);
    out.removeAll(ours());
    return out;
  }

  /** Whether a placing is one of ours. */
  public boolean isOurs(Placing placing) {
    return now.sheet().entrant(placing.athlete()).map(e -> !e.isRival()).orElse(false);
  }

  /** Whether a placing is the first that would not jump on as the marks stand. */
  public boolean isCutBefore(int index) {
    Meet meet = now.meet();
    if (meet == null || !meet.hasCut() || index == 0) {
      return false;
    }
    List<String> in = meet.goesOn();
    return in.contains(now.placings().get(index - 1).athlete()) && !in.contains(now.placings().get(index).athlete());
  }

  /** The attempts of a placing, round by round, as on the sheet. */
  public List<Cell> cells(Placing placing) {
    List<Cell> out = new ArrayList<>();
    Meet meet = now.meet();
    for (int round : rounds()) {
      Attempt a = meet == null ? null : meet.attempt(placing.athlete(), round);
      out.add(a == null ? new Cell("", "") : new Cell(shown(a), windOf(a)));
    }
    while (!out.isEmpty() && out.get(out.size() - 1).result().isEmpty()) {
      out.remove(out.size() - 1);
    }
    return out;
  }

  /**
   * An attempt on the sheet.
   *
   * @param result distance, x or a dash; empty when it is to come
   * @param wind with its sign, and what is wrong with it; or empty
   */
  public record Cell(String result, String wind) {}

  private String shown(Attempt a) {
    Double d = a.distance_m();
    return d == null
        ? a.result() == Attempt.Result.PASS ? "\u2013" : "x"
        : Figures.bare(unit, now.sheet().rules().measure().down(d));
  }

  /** In a combined event no single wind is too much. */
  private String windOf(Attempt a) {
    Double wind = a.wind();
    return wind == null ? "" : Figures.wind(Wind.rounded(wind)) + (isCombined() || Wind.legal(wind) ? "" : " too much");
  }

  /** What stands behind a best whose wind was not legal, or empty. */
  public String legal(Placing placing) {
    Double best = placing.best_m();
    Double legal = placing.bestLegal_m();
    boolean windy = cells(placing).stream().anyMatch(c -> c.wind().endsWith("too much"));
    if (best == null || !windy || isCombined() || (legal != null && legal >= best - 1e-9)) {
      return "";
    }
    return legal == null ? "no mark with a legal wind" : "with legal wind " + unit.write(legal);
  }

  /** An attempt in words, its distance as it counts. */
  static String told(KeptAttempt kept, LengthUnit unit, MeasureRule measure) {
    Attempt a = kept.attempt();
    StringBuilder out = new StringBuilder(a.athlete()).append(", round ").append(a.round()).append(": ");
    Double d = a.distance_m();
    Double gap = a.gap_m();
    Double wind = a.wind();
    out.append(d == null ? a.result() == Attempt.Result.PASS ? "pass" : "foul" : unit.write(measure.down(d)));
    if (gap != null) {
      out.append(", ").append(unit.writeSmall(gap)).append(gap < 0 ? " over the line" : " behind the line");
    }
    if (wind != null) {
      out.append(", wind ").append(Figures.wind(Wind.rounded(wind)));
      if (!Wind.legal(wind)) {
        out.append(" (above the limit)");
      }
    }
    return out.toString();
  }

  /** The newest attempt of the meet, or null. */
  public @Nullable KeptAttempt newest() {
    List<KeptAttempt> all = now.sheet().attempts();
    return all.isEmpty() ? null : all.get(all.size() - 1);
  }

  /** Number of the newest attempt that the page shows, 0 without any: who enters has seen so far. */
  public long upTo() {
    return now.sheet().attempts().stream().mapToLong(KeptAttempt::id).max().orElse(0);
  }

  /** When the page was made, by the program's clock [ms]. */
  public long made_ms() {
    return clock.millis();
  }

  /** Of whom and which round the newest attempt is: {@code 3.1}; empty without any. */
  public String newestOf() {
    KeptAttempt newest = newest();
    return newest == null ? "" : newest.entrantId() + "." + newest.attempt().round();
  }

  /** The rounds' orders as they stand and what was entered, by numbers on the list, for the phone without a connection: {@code 1:3,4;2:3,4}. */
  public String orders() {
    Meet meet = now.meet();
    if (meet == null) {
      return "";
    }
    return rounds().stream()
        .map(r -> r + ":" + meet.order(r).stream().map(this::number).collect(Collectors.joining(",")))
        .collect(Collectors.joining(";"));
  }

  /** Who has an attempt in which round: {@code 3.1,4.1}. */
  public String entered() {
    return now.sheet().attempts().stream().map(a -> a.entrantId() + "." + a.attempt().round()).collect(Collectors.joining(","));
  }

  private String number(String name) {
    return now.sheet().entrant(name).map(e -> String.valueOf(e.id())).orElse("");
  }

  /** The number of a placing's athlete on the list. */
  public String number(Placing placing) {
    return number(placing.athlete());
  }

  /** Makes a double tap one choice: of one entry there is one. */
  public String tokenOf(Beside beside) {
    return String.format(Locale.ROOT, "%032x", beside.id());
  }

  /** What was entered beside, in words. */
  public String told(Beside beside) {
    return what(beside.kept()) + entered(beside.at());
  }

  /** What stands for it, in words. */
  public String stands(Beside beside) {
    KeptAttempt stands = beside.stands();
    return stands == null ? "nothing" : what(stands) + entered(beside.stoodAt());
  }

  private String what(KeptAttempt kept) {
    return told(kept, unit, now.sheet().rules().measure()).replaceFirst("^.*, round \\d: ", "");
  }

  private String entered(@Nullable Instant at) {
    return at == null ? "" : ", entered " + OF_DAY.format(at.atZone(clock.getZone()));
  }

  /** All attempts, newest first. */
  public List<KeptAttempt> newestFirst() {
    List<KeptAttempt> out = new ArrayList<>(now.sheet().attempts());
    Collections.reverse(out);
    return out;
  }

  /** An attempt in words. */
  public String told(KeptAttempt kept) {
    return told(kept, unit, now.sheet().rules().measure());
  }

  /** What the wind of a placing's best mark means in a combined event, or empty. */
  public String windSaid(Placing placing) {
    String words = now.windWords(placing);
    return words == null ? "" : words;
  }

  /** Whether more is to be said under the ranks than in a combined event. */
  public boolean isCombined() {
    return now.sheet().rules().combined() != null;
  }

  /** What stands beside the marks of a combined event, or empty. */
  public String windAbout() {
    Combined part = now.sheet().rules().combined();
    return part == null ? "" : part.wind().about();
  }

  /** Which jump it is, in words. */
  public String event() {
    Combined part = now.sheet().rules().combined();
    return Notes.capital(now.sheet().event().label()) + (part == null ? "" : " of the " + part.table().label());
  }

  /** How the meet is ruled, in a line. */
  public String rules() {
    var r = now.sheet().rules();
    Combined part = r.combined();
    if (part != null) {
      return event() + ": " + r.rounds() + " attempts for everybody, measured " + r.measure().label() + ", " + r.trialSeconds() + " s a trial";
    }
    String rounds =
        r.rounds() > r.firstRounds() ? r.firstRounds() + " rounds, then " + (r.rounds() - r.firstRounds()) + " for the best " + r.finalists() : r.rounds() + " rounds";
    return event() + ": " + rounds + "; " + r.order().label() + "; measured " + r.measure().label() + "; " + r.trialSeconds() + " s a trial";
  }

  /** The start mark for the next attempt, from where it was planned. */
  public String shiftField() {
    MeetAim a = aim;
    Double shift = a == null ? null : a.startShift_m();
    return shift == null ? "" : smallBare(shift);
  }

  private String smallBare(double metres) {
    String size = unit.writeSmall(metres).replaceFirst(" (cm|in)$", "");
    return (metres < 0 && !size.equals("0") ? "-" : "") + size;
  }

  /** Where the start mark should stand, in words. */
  public String shiftWords(double shift) {
    return Math.abs(shift) < 0.005 ? "as planned" : unit.writeSmall(shift) + (shift > 0 ? " behind the planned mark" : " before the planned mark");
  }

  /** What a rival's mark asks of ours. */
  public String needed(RivalMeaning r) {
    Double needed = r.needed_m();
    return needed == null ? "ahead" : Figures.tight(unit, needed);
  }

  /** The chance to be ahead of a rival in the end, or empty. */
  public String chance(RivalMeaning r) {
    var next = r.next();
    return next == null ? "" : Figures.odds(next.worth());
  }

  /** Where to aim against a rival, or empty. */
  public String aimAt(RivalMeaning r) {
    var next = r.next();
    return next == null ? "" : next.worthwhile() ? unit.writeSmall(next.aim_m()).replace(' ', '\u00a0') : "\u2013";
  }

  /** A small count in words: {@code 1 attempt}, {@code 3 attempts}. */
  public String left(int attempts) {
    return String.format(Locale.ROOT, attempts == 1 ? "%d attempt left" : "%d attempts left", attempts);
  }
}
