package boundwright.card.plain;

import boundwright.athlete.Athlete;
import boundwright.athlete.AthleteRepository;
import boundwright.card.plain.PlainReport.Part;
import boundwright.card.plain.PlainReport.Reader;
import boundwright.flight.RepStore;
import boundwright.footfall.Foot;
import boundwright.load.WorkLog;
import boundwright.load.account.DayLoad;
import boundwright.load.account.Work;
import boundwright.meet.MeetRepository;
import boundwright.meet.MeetSheet;
import boundwright.meet.Placing;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.Notes;
import boundwright.quantity.RefusedException;
import boundwright.readiness.TestKind;
import boundwright.readiness.TestRepository;
import boundwright.readiness.TestScore;
import boundwright.technique.LookRepository;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Makes the reports for those who do not coach: from attendance, contacts, tests, looks and meets alone. Pain, holds, growth and what was decided
 * about load are not among what is read here, so none of it can be shown.
 */
public final class PlainReports {
  /** Weeks of training that are told of. */
  public static final int WEEKS = 8;
  /** What the club's report covers if nobody says otherwise [weeks]. */
  public static final int CLUB_WEEKS = 26;
  /** Longest time that the club's report covers [days]. */
  public static final int MOST_DAYS = 400;

  private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM yyyy", Locale.ENGLISH);
  private static final DateTimeFormatter SHORT = DateTimeFormatter.ofPattern("d MMM yyyy", Locale.ENGLISH);

  private final Sources from;

  /**
   * What is read.
   *
   * @param athletes the squad
   * @param reps what was looked at
   * @param work days with work
   * @param looks faults of the coach's own
   * @param tests scores
   * @param meets meets
   */
  public record Sources(
      AthleteRepository athletes, RepStore reps, WorkLog work, LookRepository looks, TestRepository tests, MeetRepository meets) {}

  /** Reads from these. */
  public PlainReports(Sources from) {
    this.from = from;
  }

  /** For the athlete: how far, what was done, what to work on, what comes. */
  public PlainReport forAthlete(Athlete athlete, LengthUnit unit, LocalDate today, String footnote) {
    List<Part> parts = new ArrayList<>();
    parts.add(progress(athlete, unit));
    parts.add(new WorkOn(from.reps(), from.looks()).part(athlete, today));
    parts.add(Part.of("Training in the last " + WEEKS + " weeks", training(athlete, today, true)));
    parts.add(Part.of("Meets", meets(athlete, unit, today)));
    return new PlainReport(Reader.ATHLETE, athlete.name(), DAY.format(today), parts, footnote);
  }

  /** For those at home: attendance, progress and meets, and whom to ask. */
  public PlainReport forHome(Athlete athlete, LengthUnit unit, LocalDate today, String footnote) {
    List<Part> parts = new ArrayList<>();
    parts.add(Part.of("Training in the last " + WEEKS + " weeks", training(athlete, today, false)));
    parts.add(progress(athlete, unit));
    parts.add(Part.of("Meets", meets(athlete, unit, today)));
    parts.add(
        Part.of(
            "Good to know",
            List.of(
                "Nothing about health stands here. Tell the coach of pain, illness or tiredness before training; licensed medical staff decide what is to be done.",
                "What you agreed to, films and shown results among it, can be seen and taken back at any time: ask the coach.")));
    return new PlainReport(Reader.HOME, athlete.name(), DAY.format(today), parts, footnote);
  }

  /**
   * For the club: the squad from one day to another.
   *
   * @param today whose meets may still be under way
   * @throws RefusedException if the days lie the wrong way round or more than {@value #MOST_DAYS} days apart
   */
  public PlainReport forClub(LocalDate first, LocalDate last, LocalDate today, LengthUnit unit, String footnote) {
    if (last.isBefore(first) || first.plusDays(MOST_DAYS).isBefore(last)) {
      throw new RefusedException(
          "From " + first + " to " + last + " is no time to report on: the last day comes after the first, and at most " + MOST_DAYS
              + " days lie between. Give other days.");
    }
    ClubSeason season = new ClubSeason(from, first, last, today, unit);
    return new PlainReport(Reader.CLUB, "The squad", SHORT.format(first) + " to " + SHORT.format(last), season.parts(), footnote);
  }

  /** The test that tells most: its newest score against the first of a year, and its picture. */
  private Part progress(Athlete athlete, LengthUnit unit) {
    List<TestScore> all = Arrays.stream(TestKind.values()).flatMap(k -> from.tests().all(k).stream()).toList();
    Optional<TestProgress> most =
        TestProgress.of(all, athlete.id()).stream().max(TestProgress.TELLING);
    if (most.isEmpty()) {
      return Part.of("Progress", List.of(runUp(athlete) + " No test was taken yet, so progress cannot be told."));
    }
    return new Part(
        "Progress", List.of(runUp(athlete)), most.get().picture(unit), most.get().inWords(unit), List.of(), List.of());
  }

  private static String runUp(Athlete athlete) {
    return "Bounds from " + (athlete.rung() == 0 ? "standing." : "a run-up of " + Notes.counted(athlete.rung(), "step") + ".");
  }

  private List<String> training(Athlete athlete, LocalDate today, boolean legs) {
    List<DayLoad> days = days(from.work(), athlete, today.minusWeeks(WEEKS).plusDays(1), today);
    if (days.isEmpty()) {
      return List.of("No training was entered.");
    }
    int contacts = days.stream().mapToInt(DayLoad::contacts).sum();
    String said = "Trained on " + Notes.counted(days.size(), "day") + (weeks(days) == WEEKS ? ", some in every week: " : ", in " + weeks(days) + " of these weeks: ") + contacts + " contacts";
    if (!legs) {
      return List.of(said + " with the ground in jumps and bounds, all counted so that the legs are not asked too much." + runThroughs(days));
    }
    int right = days.stream().mapToInt(d -> d.contacts(Foot.RIGHT)).sum();
    int left = days.stream().mapToInt(d -> d.contacts(Foot.LEFT)).sum();
    return List.of(said + ", " + right + " right and " + left + " left." + runThroughs(days));
  }

  /** What run-throughs have in the sum of these days, a sentence after it; empty without any: running is no bounding. */
  static String runThroughs(List<DayLoad> days) {
    int n = days.stream().flatMap(d -> d.work().stream()).filter(w -> w.kind() == Work.Kind.RUN_THROUGH).mapToInt(Work::contacts).sum();
    return n == 0 ? "" : " " + n + " of them from run-throughs, each counted as one, at the board.";
  }

  /** Days with work of somebody from one day to another, oldest first. */
  static List<DayLoad> days(WorkLog work, Athlete athlete, LocalDate first, LocalDate last) {
    Map<Long, List<DayLoad>> all = work.since(List.of(athlete), first);
    return all.getOrDefault(athlete.id(), List.of()).stream().filter(d -> !d.isEmpty() && !d.date().isAfter(last)).toList();
  }

  private static long weeks(List<DayLoad> days) {
    LocalDate last = days.get(days.size() - 1).date();
    return days.stream().map(d -> (last.toEpochDay() - d.date().toEpochDay()) / 7).distinct().count();
  }

  private List<String> meets(Athlete athlete, LengthUnit unit, LocalDate today) {
    List<MeetSheet> own = from.meets().withAthlete(athlete.id(), today.minusYears(1).plusDays(1));
    List<MeetSheet> newestFirst = new ArrayList<>(own);
    Collections.reverse(newestFirst);
    Stream<String> past = newestFirst.stream().filter(m -> !m.date().isAfter(today)).map(m -> result(m, athlete, unit, today)).flatMap(Optional::stream);
    Stream<String> coming =
        own.stream().filter(m -> m.date().isAfter(today)).map(m -> "Next: " + m.name() + ", " + SHORT.format(m.date()) + ", " + m.event().label() + ".");
    List<String> out = Stream.concat(coming, past).toList();
    return out.isEmpty() ? List.of("None in the last year, and none to come is entered yet.") : out;
  }

  /** What somebody jumped in a meet, and their place; empty where nothing was entered of them. */
  static Optional<String> result(MeetSheet meet, Athlete athlete, LengthUnit unit, LocalDate today) {
    return placing(meet, meet.meet().placings(), athlete)
        .map(
            p -> {
              String when = meet.name() + ", " + SHORT.format(meet.date()) + ", " + meet.event().label() + ": ";
              Double best = p.best_m();
              return when + (best == null ? "no valid jump." : unit.write(best) + ", place " + p.rank() + " of " + meet.entrants().size() + soFar(meet, today) + ".");
            });
  }

  /** Behind a place that may still change today. */
  static String soFar(MeetSheet meet, LocalDate today) {
    return meet.date().equals(today) && meet.meet().roundNow().isPresent() ? " so far" : "";
  }

  /** Of these placings of a meet, that of an athlete who has jumped in it. */
  static Optional<Placing> placing(MeetSheet meet, List<Placing> placings, Athlete athlete) {
    return meet.entrantOf(athlete.id())
        .filter(e -> meet.attempts().stream().anyMatch(a -> a.entrantId() == e.id()))
        .flatMap(e -> placings.stream().filter(p -> p.athlete().equals(e.name())).findFirst());
  }
}
