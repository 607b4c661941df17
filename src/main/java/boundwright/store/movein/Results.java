package boundwright.store.movein;

import boundwright.athlete.Athlete;
import boundwright.athlete.NearNames;
import boundwright.jump.Event;
import boundwright.meet.Attempt;
import boundwright.meet.BoardDistance;
import boundwright.meet.Entrant;
import boundwright.meet.KeptAttempt;
import boundwright.meet.MeetRules;
import boundwright.meet.MeetSheet;
import boundwright.quantity.RefusedException;
import boundwright.store.NameKey;
import boundwright.store.Workbench;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** A file of attempts in past meets. */
final class Results {
  /** The limit of a meet. */
  private static final int ROUNDS = 6;
  private static final double SAME_M = 0.0005;
  private static final String UNNAMED = "Meet";
  private static final Set<String> TRIPLE = Set.of("", "triple jump", "triple", "tj", "triplejump", "triple-jump");
  private static final Set<String> LONG = Set.of("long jump", "long", "lj", "longjump", "long-jump");
  private static final Set<String> FOULS = Set.of("x", "foul", "f", "nm", "fouled");
  private static final Set<String> PASSES = Set.of("-", "\u2013", "p", "pass", "passed");
  /** Nobody notes in a result list how far the board stood from the sand; the coach can mend it on the meet's page. */
  private static BoardDistance board(Event event) {
    return BoardDistance.own(event, "past results, board assumed", event == Event.TRIPLE_JUMP ? 13 : 2);
  }


  private final Workbench bench;
  private final Columns columns;
  private final Days days;
  private final Map<String, Athlete> squad;
  private final Map<Key, MeetSheet> meets;
  /** Attempts that are here or come with rows before, by meet and athlete. */
  private final Map<Place, Map<Integer, Attempt>> rounds = new HashMap<>();
  /** Those that were here and no row of the file was matched with yet. */
  private final Map<Place, List<Attempt>> unmatched = new HashMap<>();

  Results(Workbench bench, Columns columns) {
    this.bench = bench;
    this.columns = columns;
    this.days = new Days(columns.order());
    this.squad = bench.athletes().all().stream().collect(Collectors.toMap(a -> NameKey.of(a.name()), Function.identity()));
    this.meets = new HashMap<>();
    bench.meets().all().forEach(m -> meets.putIfAbsent(new Key(NameKey.of(m.name()), m.date(), m.event()), m));
  }

  private record Key(String name, LocalDate date, Event event) {}

  private record Place(Key meet, long athleteId) {}

  private record Entry(RowLook look, Place place, String meet, Attempt attempt) {}

  List<RowLook> look(Sheet sheet) {
    List<RowLook> out = new ArrayList<>();
    read(sheet, new ArrayList<>(), out);
    return out;
  }

  private void read(Sheet sheet, List<Entry> good, List<RowLook> looks) {
    RowLook.each(sheet, this::entry, Entry::look, good, looks);
  }

  private Entry entry(Sheet.Row row) {
    Event event = event(columns.cell(row, Field.EVENT));
    Athlete who = athlete(Cells.name(columns.cell(row, Field.RESULT_ATHLETE)));
    LocalDate date = days.read("date", columns.cell(row, Field.MEET_DATE));
    if (date.isAfter(LocalDate.now(bench.clock()))) {
      throw new RefusedException("The date " + date + " lies after today: that is no past meet. Check the year.");
    }
    String written = Cells.plain(columns.cell(row, Field.MEET));
    String meet = MeetSheet.of(written.isEmpty() ? UNNAMED : written, date, board(event), null, MeetRules.DEFAULT.of(event)).name();
    Place place = new Place(new Key(NameKey.of(meet), date, event), who.id());
    String round = columns.cell(row, Field.ROUND);
    Attempt asked = attempt(event, who, row, round.isEmpty() ? 1 : round(round));
    Map<Integer, Attempt> used = rounds.computeIfAbsent(place, this::kept);
    if (matches(place, asked, !round.isEmpty())) {
      return new Entry(new RowLook(row.line(), RowLook.State.THERE, told(who, asked, meet, date)), place, meet, asked);
    }
    int at = round.isEmpty() ? free(used, who, meet) : asked.round();
    Attempt taken = used.get(at);
    if (taken != null) {
      throw new RefusedException("Round " + at + " of " + who.name() + " in " + meet + " holds " + said(taken) + " already. Correct the file, or the meet on its page.");
    }
    Attempt attempt = new Attempt(event, who.name(), at, asked.result(), asked.distance_m(), asked.wind(), null, 0);
    used.put(at, attempt);
    return new Entry(new RowLook(row.line(), RowLook.State.NEW, told(who, attempt, meet, date)), place, meet, attempt);
  }

  /** The triple jump where nothing is said. */
  private static Event event(String written) {
    String plain = written.toLowerCase(Locale.ROOT);
    if (TRIPLE.contains(plain)) {
      return Event.TRIPLE_JUMP;
    }
    if (LONG.contains(plain)) {
      return Event.LONG_JUMP;
    }
    throw new RefusedException("The event '" + written + "' is neither the triple jump nor the long jump; other events have no place here.");
  }

  private Athlete athlete(String name) {
    Athlete who = squad.get(NameKey.of(name));
    if (who != null) {
      return who;
    }
    List<String> near = NearNames.of(name, squad.values().stream().map(Athlete::name).sorted().toList());
    throw new RefusedException(
        "No athlete is called '" + name + "'. " + (near.isEmpty() ? "Take the roster in first." : "Did you mean " + String.join(", or ", near) + "?"));
  }

  private Attempt attempt(Event event, Athlete who, Sheet.Row row, int round) {
    String cell = columns.cell(row, Field.DISTANCE);
    Double wind = Cells.wind(columns.cell(row, Field.WIND));
    String word = cell.toLowerCase(Locale.ROOT);
    if (FOULS.contains(word)) {
      return new Attempt(event, who.name(), round, Attempt.Result.FOUL, null, wind, null, 0);
    }
    if (PASSES.contains(word)) {
      return new Attempt(event, who.name(), round, Attempt.Result.PASS, null, null, null, 0);
    }
    if (cell.isEmpty()) {
      throw new RefusedException("The distance is empty. Write a length, x for a foul, or - for a pass.");
    }
    return new Attempt(event, who.name(), round, Attempt.Result.VALID, Cells.length("distance", cell, columns.unit()), wind, null, 0);
  }

  private static int round(String cell) {
    if (!cell.matches("[1-" + ROUNDS + "]")) {
      throw new RefusedException("The round '" + cell + "' is none: 1 to " + ROUNDS + ". Leave it empty, and rounds are counted in the file's order.");
    }
    return Integer.parseInt(cell);
  }

  private Map<Integer, Attempt> kept(Place place) {
    Map<Integer, Attempt> out = new HashMap<>();
    MeetSheet meet = meets.get(place.meet);
    if (meet != null) {
      meet.entrantOf(place.athleteId)
          .ifPresent(e -> meet.attempts().stream().filter(a -> a.entrantId() == e.id()).map(KeptAttempt::attempt).forEach(a -> out.put(a.round(), a)));
    }
    unmatched.put(place, new ArrayList<>(out.values()));
    return out;
  }

  private boolean matches(Place place, Attempt asked, boolean sameRound) {
    List<Attempt> left = unmatched.getOrDefault(place, List.of());
    for (Attempt a : left) {
      if (a.result() == asked.result() && (!sameRound || a.round() == asked.round()) && same(a.distance_m(), asked.distance_m())) {
        left.remove(a);
        return true;
      }
    }
    return false;
  }

  private static boolean same(@Nullable Double a, @Nullable Double b) {
    return (a == null || b == null) ? Objects.equals(a, b) : Math.abs(a - b) < SAME_M;
  }

  private static int free(Map<Integer, Attempt> used, Athlete who, String meet) {
    for (int r = 1; r <= ROUNDS; r++) {
      if (!used.containsKey(r)) {
        return r;
      }
    }
    throw new RefusedException(who.name() + " has " + ROUNDS + " attempts in " + meet + " already, and a meet has no more. Check the date and the meet.");
  }

  private String told(Athlete who, Attempt a, String meet, LocalDate date) {
    Double wind = a.wind();
    return who.name() + ": " + said(a) + (a.event() == Event.TRIPLE_JUMP ? "" : ", " + a.event().label()) + (wind == null ? "" : String.format(Locale.ROOT, ", wind %+.1f m/s", wind)) + ", " + meet + ", " + date + ", round " + a.round();
  }

  private String said(Attempt a) {
    Double distance = a.distance_m();
    return distance == null ? a.result() == Attempt.Result.FOUL ? "a foul" : "a pass" : columns.unit().write(distance);
  }

  /** Takes what {@link #look} showed, inside the write of the caller. */
  void take(Sheet sheet, long number, ImportRows rows) {
    List<Entry> good = new ArrayList<>();
    read(sheet, good, new ArrayList<>());
    Map<Place, Long> entrants = new HashMap<>();
    for (Entry e : good) {
      if (e.look.state() != RowLook.State.NEW) {
        continue;
      }
      MeetSheet meet = meets.computeIfAbsent(e.place.meet, key -> made(e, number, rows));
      long entrant = entrants.computeIfAbsent(e.place, p -> entrant(meet, p, e.attempt.athlete(), number, rows));
      rows.came(number, ImportRows.Came.ATTEMPT, bench.meets().add(meet.id(), entrant, e.attempt, "").id());
    }
  }

  /** Six rounds for everybody: who went on is not known of a past meet. */
  private MeetSheet made(Entry e, long number, ImportRows rows) {
    MeetRules d = MeetRules.DEFAULT;
    Event event = e.attempt.event();
    MeetRules rules = new MeetRules(event, null, ROUNDS, ROUNDS, d.finalists(), d.order(), d.measure(), d.trialSeconds());
    MeetSheet kept = bench.meets().add(MeetSheet.of(e.meet, e.place.meet.date(), board(event), null, rules));
    rows.came(number, ImportRows.Came.MEET, kept.id());
    return kept;
  }

  private long entrant(MeetSheet meet, Place place, String name, long number, ImportRows rows) {
    return meet.entrantOf(place.athleteId)
        .map(Entrant::id)
        .orElseGet(
            () -> {
              long id = bench.meets().enter(meet.id(), new Entrant(0, place.athleteId, name)).id();
              rows.came(number, ImportRows.Came.ENTRANT, id);
              return id;
            });
  }
}
