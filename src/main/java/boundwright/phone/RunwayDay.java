package boundwright.phone;

import boundwright.athlete.Athlete;
import boundwright.flight.Rep;
import boundwright.footfall.Routine;
import boundwright.footfall.Sequence;
import boundwright.load.DayVerdict;
import boundwright.load.LoadDesk;
import boundwright.load.account.Work;
import boundwright.phone.Parcel.Part;
import boundwright.phone.PhoneAthlete.Held;
import boundwright.quantity.RefusedException;
import boundwright.runway.CoachSettings;
import boundwright.runway.Drill;
import boundwright.runway.MarkMove;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * The day as it stands on one phone: what the server handed out, and what was tapped since. Everything follows from those two, in the
 * order in which the server learns: by day, then those that it has by number, then those it has not by when they were tapped. Not for
 * many threads.
 */
public final class RunwayDay {
  /** After every number that a store gives. */
  private static final long AFTER_STORED = 1L << 60;
  private static final String VERDICT = "verdict";

  private final Parcel parcel;
  private final Map<Long, Part> parts = new LinkedHashMap<>();
  private final Map<Long, PhoneAthlete> squad = new LinkedHashMap<>();
  private final List<Entry> taken = new ArrayList<>();
  private final Set<String> known = new HashSet<>();
  private final DayBooks books;
  private LoadDesk desk;
  private Cards cards;
  private LocalDate day;

  private RunwayDay(Parcel parcel) {
    this.parcel = parcel;
    this.day = parcel.day();
    parcel.parts().forEach(p -> parts.put(p.profile().athlete().id(), p));
    this.books = new DayBooks(parcel.guard(), squad, day);
    this.desk = desk(day);
    this.cards = new Cards(parcel.settings(), day);
    rebuild(List.of());
  }

  /**
   * Opens what the server handed out.
   *
   * @param parcel as {@link Parcel#text} wrote it
   * @throws RefusedException if it is no such text, or another version's
   */
  public static RunwayDay open(String parcel) {
    return new RunwayDay(ParcelReader.parcel(parcel));
  }

  /** Opens a day that is at hand; the same as its text. */
  public static RunwayDay open(Parcel parcel) {
    return open(parcel.text());
  }

  /**
   * Puts what the server says of one athlete now in place of what it said before, and takes the unsent entries in again: those that the
   * server has already are not counted twice.
   *
   * @param part as {@link Part#text} wrote it, or several of them one after another
   * @throws RefusedException if it is no such text, or another version's; then nothing changes
   */
  public void refresh(String part) {
    ParcelReader.parts(part).forEach(p -> parts.put(p.profile().athlete().id(), p));
    rebuild(List.copyOf(taken));
  }

  /**
   * Takes all unsent entries in place of those taken before, in order.
   *
   * @param lines of {@link Entry#line}
   * @return those that could not be taken; the others are taken
   */
  public List<Refused> entries(List<String> lines) {
    List<Refused> refused = new ArrayList<>();
    List<Entry> all = new ArrayList<>();
    for (String line : lines) {
      try {
        all.add(Entry.parse(line));
      } catch (RefusedException e) {
        refused.add(new Refused("", String.valueOf(e.getMessage())));
      }
    }
    refused.addAll(rebuild(all));
    return List.copyOf(refused);
  }

  private List<Refused> rebuild(List<Entry> entries) {
    squad.clear();
    known.clear();
    taken.clear();
    move(parcel.day());
    parts.forEach(
        (id, part) -> {
          squad.put(id, new PhoneAthlete(part));
          part.reps().forEach(k -> know(k.token()));
          part.gone().forEach(this::know);
        });
    List<Refused> refused = new ArrayList<>();
    for (Entry e : entries) {
      try {
        take(e);
      } catch (RefusedException no) {
        refused.add(new Refused(e.token(), String.valueOf(no.getMessage())));
      }
    }
    return refused;
  }

  private void know(@Nullable String token) {
    if (token != null) {
      known.add(token);
    }
  }

  private void move(LocalDate to) {
    day = to;
    books.on(to);
    desk = desk(to);
    cards = new Cards(parcel.settings(), to);
    squad.values().forEach(PhoneAthlete::forget);
  }

  /**
   * Takes one entry more.
   *
   * @return what it did, in a sentence: {@code The mark moved 12 cm back: from 9.40 m to 9.52 m.} Empty where there is nothing to say
   * @throws RefusedException if it could not be taken; then nothing changes
   */
  public String add(String line) {
    Entry e = Entry.parse(line);
    Map<Long, Double> before = new HashMap<>();
    Held held = e.did() == null ? meant(e) : null;
    Rep meant = held != null ? held.rep() : e.did() != null ? e.rep(date(e)) : null;
    if (meant != null && e.kind() != Entry.Kind.LOOK) {
      before.put(e.athleteId(), mark(e.athleteId(), meant));
    }
    if (meant != null && e.kind() == Entry.Kind.HAND) {
      before.put(e.to(), mark(e.to(), meant));
    }
    take(e);
    return switch (e.kind()) {
      case REP -> moved(e.athleteId(), meant, before.get(e.athleteId()));
      case UNDO -> ("Taken back. " + moved(e.athleteId(), meant, before.get(e.athleteId()))).strip();
      case HAND -> ("Given to " + who(e.to()).athlete().name() + ". " + moved(e.to(), meant, before.get(e.to()))).strip();
      case LOOK -> "Noted.";
    };
  }

  private String moved(long athlete, @Nullable Rep rep, @Nullable Double before) {
    Double after = rep == null ? null : mark(athlete, rep);
    return before == null || after == null ? "" : new MarkMove(before, after).said(settings().unit());
  }

  /** The mark for the drill of a rep [m]; null on the flat, while bounding is stopped, and where none can be given. */
  private @Nullable Double mark(long athlete, Rep rep) {
    PhoneAthlete p = who(athlete);
    boolean flat =
        rep.markToSand_m() == null
            && parcel.plan().drills().stream().anyMatch(d -> !d.inSand() && d.sequence().contacts().equals(rep.sequence().contacts()));
    if (flat || verdict(p).held()) {
      return null;
    }
    return cards.mark(p, rep.sequence(), rep.approachSteps(), rep.surface());
  }

  /** Once for each token, whichever way it came. */
  private void take(Entry e) {
    if (known.contains(e.token())) {
      return;
    }
    PhoneAthlete p = who(e.athleteId());
    switch (e.kind()) {
      case REP -> {
        LocalDate date = date(e);
        p.add(new Held(e.rep(date), e.token(), AFTER_STORED + taken.size()));
        if (date.isAfter(day)) {
          move(date);
        }
      }
      case UNDO -> {
        Held held = meant(e);
        if (held != null) {
          p.remove(held);
        }
      }
      case HAND -> {
        PhoneAthlete to = who(e.to());
        Held held = meant(e);
        if (held != null) {
          p.remove(held);
          to.add(new Held(held.rep().of(e.to()), held.token(), held.place()));
        }
      }
      case LOOK -> {
        Held held = meant(e);
        if (held != null) {
          p.replace(held, new Held(looked(held.rep(), e), held.token(), held.place()));
        }
      }
    }
    known.add(e.token());
    taken.add(e);
  }

  private static Rep looked(Rep r, Entry e) {
    return new Rep(
        r.id(), r.athleteId(), r.date(), r.sequence(), r.approachSteps(), r.surface(), r.footprints_m(), r.landing_m(), r.outcome(),
        r.brokeOffAfter(), r.markToSand_m(), e.looked(), e.faults());
  }

  /** The rep that an entry means; null if the server did already what it says. */
  private @Nullable Held meant(Entry e) {
    Held held = who(e.athleteId()).find(e.of());
    boolean given = e.kind() == Entry.Kind.HAND && who(e.to()).find(e.of()) != null;
    if (held == null && !given && !known.contains(e.of())) {
      throw new RefusedException(
          "That rep is not among today's of " + who(e.athleteId()).athlete().name()
              + ". It may have been taken back or given to somebody already; look at the athlete's list.");
    }
    return held;
  }

  /** The day of a tap where the coach stands; a clock that is behind the page says the page's day. */
  private LocalDate date(Entry e) {
    LocalDate tapped = e.day(parcel.zone());
    return tapped.isBefore(parcel.day()) ? parcel.day() : tapped;
  }

  private PhoneAthlete who(long athleteId) {
    PhoneAthlete p = squad.get(athleteId);
    if (p == null) {
      throw new RefusedException(
          "No athlete of this page has the number " + athleteId + ". Load the page again where there is a connection.");
    }
    return p;
  }

  private CoachSettings settings() {
    return parcel.settings();
  }

  private DayVerdict verdict(PhoneAthlete p) {
    return p.once(VERDICT, () -> desk.day(p.athlete()));
  }

  private LoadDesk desk(LocalDate date) {
    return new LoadDesk(books, this::planned, books, books, Clock.fixed(date.atStartOfDay().toInstant(ZoneOffset.UTC), ZoneOffset.UTC));
  }

  /** A phone knows the plan of its day alone. */
  private Map<Long, List<Work>> planned(List<Athlete> athletes, LocalDate asked) {
    Map<Long, List<Work>> out = new HashMap<>();
    for (Athlete a : athletes) {
      List<Work> work = new ArrayList<>();
      for (int i = 0; asked.equals(day) && i < parcel.plan().drills().size(); i++) {
        Drill d = parcel.plan().drills().get(i);
        work.add(new Work(d.sequence(), d.sets() * d.reps(), steps(who(a.id()), i + 1), settings().facility().surface()));
      }
      out.put(a.id(), work);
    }
    return out;
  }

  /** The drill with this number; the usual routine when nothing is planned. */
  private Drill drill(int number) {
    List<Drill> drills = parcel.plan().drills();
    if (number < (drills.isEmpty() ? 0 : 1) || number > drills.size()) {
      throw new RefusedException(
          "The day has no drill " + number + (drills.isEmpty() ? ": nothing is planned." : ": there are 1 to " + drills.size() + ".")
              + " Load the page again where there is a connection.");
    }
    return number == 0 ? new Drill(Routine.HOP_STEP.sequence(), null, 1, 1, true) : drills.get(number - 1);
  }

  private int steps(PhoneAthlete p, int number) {
    List<Integer> steps = p.part().steps();
    int at = Math.max(0, number - 1);
    return at < steps.size() ? steps.get(at) : drill(number).stepsFor(p.athlete().rung());
  }

  private List<Held> done(PhoneAthlete p, int number) {
    Sequence sequence = drill(number).sequence();
    int steps = steps(p, number);
    return p.on(day).stream()
        .filter(h -> h.rep().approachSteps() == steps)
        .filter(
            h ->
                h.rep().sequence().contacts().equals(sequence.contacts())
                    || h.rep().sequence().contacts().equals(sequence.mirrored().contacts()))
        .toList();
  }

  /**
   * What is to be shown.
   *
   * @param athleteId who
   * @param drill of the plan, from 1; 0 when nothing is planned
   * @throws RefusedException if there is no such athlete or drill
   */
  public RunwayCard card(long athleteId, int drill) {
    PhoneAthlete p = who(athleteId);
    Drill d = drill(drill);
    DayVerdict verdict = verdict(p);
    return cards
        .card(
            p, drill, d, steps(p, drill), done(p, drill), p.on(day), drill == 0 ? 0 : d.sets() * d.reps(), verdict,
            desk.open(p.athlete(), verdict.withPlan()));
  }

  /** A length as the coach writes it [m]. */
  public String write(double metres) {
    return settings().unit().write(metres);
  }

  /**
   * A length that was typed, in the coach's unit [m].
   *
   * @throws RefusedException if it cannot be read
   */
  public double read(String typed) {
    return settings().unit().read("length", typed);
  }

  /**
   * The numbers that a card rests on, in a fixed order [m, chances of 0 to 1, m/s]: for comparing two engines to the last digits, never
   * for showing. Empty where no mark can be given.
   *
   * @param athleteId who
   * @param drill as for {@link #card}
   */
  public List<Double> figures(long athleteId, int drill) {
    PhoneAthlete p = who(athleteId);
    return verdict(p).held() ? List.of() : cards.figures(p, drill(drill).sequence(), steps(p, drill));
  }

  /** The athletes in the order in which they were handed out, each with how far the day's drills are. */
  public List<Who> squad() {
    List<Who> out = new ArrayList<>();
    List<Drill> drills = parcel.plan().drills();
    for (PhoneAthlete p : squad.values()) {
      List<Step> steps = new ArrayList<>();
      for (int n = drills.isEmpty() ? 0 : 1; n <= drills.size(); n++) {
        Drill d = drill(n);
        steps.add(
            new Step(n, d.sequence().text(), Athlete.fromSteps(steps(p, n)), done(p, n).size(), n == 0 ? 0 : d.sets() * d.reps()));
      }
      out.add(new Who(p.athlete().id(), p.athlete().name(), verdict(p).held(), List.copyOf(steps)));
    }
    return List.copyOf(out);
  }

  /**
   * One athlete of the day.
   *
   * @param athleteId who
   * @param name as called at the track
   * @param held whether bounding is stopped
   * @param drills in order; one, with the number 0, when nothing is planned
   */
  public record Who(long athleteId, String name, boolean held, List<Step> drills) {}

  /**
   * A drill of an athlete.
   *
   * @param drill its number, from 1; 0 when nothing is planned
   * @param letters of the sequence
   * @param from {@code from 4 steps}
   * @param repsDone today
   * @param repsPlanned 0 when nothing is planned
   */
  public record Step(int drill, String letters, String from, int repsDone, int repsPlanned) {}

  /**
   * An entry that could not be taken.
   *
   * @param token of the entry; empty where none could be read
   * @param why in a sentence for the coach
   */
  public record Refused(String token, String why) {}
}
