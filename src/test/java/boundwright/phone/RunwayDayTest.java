package boundwright.phone;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.athlete.Athlete;
import boundwright.athlete.Surface;
import boundwright.demo.InventedFolder;
import boundwright.flight.FlightModel;
import boundwright.flight.Outcome;
import boundwright.flight.Rep;
import boundwright.footfall.Sequence;
import boundwright.load.DayVerdict;
import boundwright.load.LegCare.MedicalHold;
import boundwright.load.LegCare.Pain;
import boundwright.quantity.RefusedException;
import boundwright.runway.Drill;
import boundwright.runway.MarkAdvice;
import boundwright.store.Workbench;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The phone says what the server says, of the invented squad on a real store: the outside is the server's own desk and advisor. */
class RunwayDayTest {
  private static final Instant NOW = Instant.parse("2026-05-12T09:00:00Z");
  private static final Clock CLOCK = Clock.fixed(NOW, ZoneOffset.UTC);
  private static final LocalDate TODAY = LocalDate.of(2026, 5, 12);
  private static final long SEED = 1313;

  @TempDir Path folder;
  private Workbench bench;
  private final Map<Long, String> tokens = new HashMap<>();
  private final Random random = new Random(SEED);
  private int taps;

  @BeforeEach
  void open() {
    bench = Workbench.open(InventedFolder.fill(folder, CLOCK), CLOCK);
  }

  @AfterEach
  void close() {
    bench.close();
  }

  private Packer packer() {
    return new Packer(
        bench.athletes(), bench.reps(), bench.logbook(), bench.settings(), bench.workLog(), bench.load(), bench.care(),
        () -> bench.advisor().rungs(), Packer.Tokens.only(tokens::get), CLOCK);
  }

  private RunwayDay phone() {
    return RunwayDay.open(packer().pack(bench.athletes().all()).text());
  }

  private String token() {
    return String.format("%016x%016x", random.nextLong(), random.nextLong());
  }

  private String rep(RunwayCard c, String outcome, String token) {
    taps++;
    return "token=" + token + "&kind=REP&athleteId=" + c.athleteId() + "&atMs=" + (NOW.toEpochMilli() + taps) + "&sequence="
        + c.sequence().replace(" ", "%20") + "&steps=" + c.steps() + "&surface=" + c.surface() + "&outcome=" + outcome
        + (c.mark_m() == null ? "" : "&mark_m=" + c.mark_m());
  }

  private String about(String kind, long athlete, String of, String more) {
    taps++;
    return "token=" + token() + "&kind=" + kind + "&athleteId=" + athlete + "&atMs=" + (NOW.toEpochMilli() + taps) + "&of=" + of + more;
  }

  /** Logs on the server what the phone has taken. */
  private long log(String line) {
    Entry e = Entry.parse(line);
    Rep kept = bench.logbook().log(e.rep(e.day(ZoneOffset.UTC)));
    tokens.put(kept.id(), e.token());
    return kept.id();
  }

  private void assertSameAsServer(RunwayDay phone, String when) {
    List<Drill> drills = bench.settings().plan().drills();
    for (Athlete a : bench.athletes().all()) {
      DayVerdict verdict = bench.loadDesk().day(a);
      for (int n = 1; n <= drills.size(); n++) {
        Drill d = drills.get(n - 1);
        RunwayCard c = phone.card(a.id(), n);
        String where = when + ": " + a.name() + ", drill " + n;
        assertThat(c.held()).as(where).isEqualTo(verdict.held());
        assertThat(c.reason()).as(where).isEqualTo(verdict.reason());
        assertThat(c.answer()).as(where).isEqualTo(verdict.answer().label());
        assertThat(c.roomLeft()).as(where).isEqualTo(verdict.roomSaid());
        if (verdict.held()) {
          assertThat(c.mark()).as(where).isEmpty();
          assertThat(c.strip() + c.stripWide() + c.works() + c.next() + c.chance()).as(where).isEmpty();
          continue;
        }
        MarkAdvice advice = bench.advisor().advise(a, d.sequence(), bench.advisor().rungs().stepsFor(a, d), bench.settings().settings());
        if (d.inSand()) {
          assertThat(c.mark_m()).as(where).isEqualTo(advice.markToSand_m());
          assertThat(c.warnings()).as(where).isEqualTo(advice.warnings());
          assertThat(c.open()).as(where).isEqualTo(advice.window() != null);
        } else {
          assertThat(c.mark_m()).as(where).isNull();
        }
        assertThat(c.restsOn()).as(where).isEqualTo(advice.from() + " " + advice.sure());
      }
    }
  }

  @Test
  void marksAndVerdictsAreTheServersToTheLastDigit() {
    RunwayDay phone = phone();
    assertSameAsServer(phone, "in the morning");
    List<Athlete> squad = bench.athletes().all();
    String[] outcomes = {"IN", "SHORT", "LATE", "ABANDONED"};
    for (int i = 0; i < 12; i++) {
      Athlete a = squad.get(i % 4);
      RunwayCard c = phone.card(a.id(), i % 3 == 0 ? 5 : 1);
      if (!c.held()) {
        String line = rep(c, outcomes[i % 4], token());
        phone.add(line);
        log(line);
      }
    }
    assertSameAsServer(phone, "after twelve taps");
    assertSameAsServer(phone(), "handed out again at noon");
  }

  @Test
  void undoAndHandOverLeaveWhatTheServerWouldHave() {
    RunwayDay phone = phone();
    List<Athlete> free = bench.athletes().all().stream().filter(a -> !phone.card(a.id(), 1).held()).toList();
    Athlete one = free.get(0);
    Athlete other = free.get(1);
    String first = rep(phone.card(one.id(), 1), "SHORT", token());
    phone.add(first);
    String wrong = rep(phone.card(one.id(), 1), "LATE", token());
    phone.add(wrong);
    String last = rep(phone.card(one.id(), 1), "IN", token());
    phone.add(last);
    assertThat(phone.add(about("HAND", one.id(), Entry.parse(wrong).token(), "&to=" + other.id()))).contains(other.name());
    assertThat(phone.add(about("UNDO", one.id(), Entry.parse(first).token(), ""))).startsWith("Taken back.");
    bench.logbook().log(Entry.parse(wrong).rep(TODAY).of(other.id()));
    bench.logbook().log(Entry.parse(last).rep(TODAY));
    assertSameAsServer(phone, "after hand over and undo");
    assertThat(phone.card(one.id(), 1).done()).hasSize(phone.card(one.id(), 1).repsDone()).hasSize(1);
    assertThatThrownBy(() -> phone.add(about("UNDO", one.id(), "77777777", ""))).isInstanceOf(RefusedException.class).hasMessageContaining(one.name());
  }

  @Test
  void anEntryCountsOnceHoweverOftenItComes() {
    RunwayDay phone = phone();
    Athlete a = bench.athletes().all().stream().filter(x -> !phone.card(x.id(), 1).held()).findFirst().orElseThrow();
    List<String> lines = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      lines.add(rep(phone.card(a.id(), 1), "IN", token()));
      phone.add(lines.get(i));
    }
    RunwayCard four = phone.card(a.id(), 1);
    phone.add(lines.get(2));
    assertThat(phone.card(a.id(), 1)).isEqualTo(four);
    assertThat(phone.entries(lines)).isEmpty();
    assertThat(phone.card(a.id(), 1)).isEqualTo(four);
    log(lines.get(0));
    log(lines.get(1));
    phone.refresh(packer().part(a).text());
    assertThat(phone.card(a.id(), 1)).isEqualTo(four);
    RunwayDay reopened = phone();
    assertThat(reopened.entries(lines)).isEmpty();
    assertThat(reopened.card(a.id(), 1)).isEqualTo(four);
    assertThat(reopened.entries(List.of("nonsense", lines.get(3)))).singleElement().satisfies(r -> assertThat(r.why()).contains("nonsense"));
  }

  @Test
  void theBaseAndTheRepsSinceGiveTheServersModel() {
    RunwayDay phone = phone();
    for (Athlete a : bench.athletes().all()) {
      RunwayCard c = phone.card(a.id(), 1);
      if (!c.held()) {
        log(rep(c, "SHORT", token()));
        log(rep(c, "IN", token()));
      }
      // dated ahead, as a file may be
      bench.logbook().log(new Rep(0, a.id(), TODAY.plusDays(a.id() % 2), Sequence.parse(c.sequence()), c.steps(), Surface.TRACK, List.of(), null, Outcome.IN, 9.0, List.of()));
      Parcel.Part part = packer().part(a);
      FlightModel model = part.base();
      for (Parcel.Kept k : part.reps()) {
        model = model.learn(k.rep());
      }
      assertThat(model.toBytes()).as(a.name()).isEqualTo(bench.logbook().model(a).toBytes());
    }
  }

  @Test
  void aHeldAthleteGetsNoMarkAndTheParcelNamesNobodyAndNoNote() {
    Athlete a = bench.athletes().all().get(0);
    bench.care().openHold(a.id(), new MedicalHold(0, TODAY.minusDays(1), "a note that stays here", null, null));
    bench.care().addPain(a.id(), new Pain(0, TODAY.minusDays(12), "old place", 2, true, false));
    String text = packer().pack(bench.athletes().all()).text();
    RunwayDay phone = RunwayDay.open(text);
    RunwayCard c = phone.card(a.id(), 1);
    assertThat(c.held()).isTrue();
    assertThat(c.mark()).isEmpty();
    assertThat(c.start()).isEmpty();
    assertThat(c.strip()).isEmpty();
    assertThat(c.reason()).contains("medical hold since 2026-05-11");
    assertThat(phone.squad().stream().filter(RunwayDay.Who::held).map(RunwayDay.Who::athleteId)).contains(a.id());
    assertThat(text).doesNotContain("stays%20here").doesNotContain("old%20place");
    assertThat(phone.add(rep(phone.card(a.id(), 1), "IN", token()) + "&mark_m=9.5")).isEmpty();
  }

  @Test
  void aHoldWhoseEndIsEnteredNamesItsDayAndNobody() {
    Athlete a = bench.athletes().all().get(0);
    MedicalHold hold = bench.care().openHold(a.id(), new MedicalHold(0, TODAY.minusDays(1), "", null, null));
    bench.care().endHold(a.id(), hold.id(), "Zzclinicianzz", TODAY.plusDays(3));
    String text = packer().pack(bench.athletes().all()).text();
    assertThat(RunwayDay.open(text).card(a.id(), 1).reason()).contains("It ends on " + TODAY.plusDays(3) + ", the day named by a clinician.");
    assertThat(text).doesNotContain("Zzclinicianzz");
  }

  @Test
  void anotherVersionACutTextAndNonsenseAreRefusedInWords() {
    String text = packer().pack(bench.athletes().all()).text();
    assertThatThrownBy(() -> RunwayDay.open(text.replaceFirst("&v=1&", "&v=2&"))).isInstanceOf(RefusedException.class).hasMessageContaining("version 2");
    String[] bad = {"", "x", text.substring(0, text.length() / 2), text.replaceFirst("rung=4", "rung=6"), text + text, packer().part(bench.athletes().all().get(0)).text()};
    for (String t : bad) {
      assertThatThrownBy(() -> RunwayDay.open(t)).isInstanceOf(RefusedException.class).hasMessageContaining("cannot be read");
    }
    for (int i = 0; i < 400; i++) {
      StringBuilder changed = new StringBuilder(text);
      int at = random.nextInt(text.length() - 1);
      changed.setCharAt(at, (char) (text.charAt(at) ^ (1 << random.nextInt(5))));
      assertThatThrownBy(() -> RunwayDay.open(changed.toString())).as("seed " + SEED + ", sign " + at).isInstanceOf(RefusedException.class);
    }
    RunwayDay phone = RunwayDay.open(text);
    List<RunwayDay.Who> before = phone.squad();
    assertThatThrownBy(() -> phone.refresh(text)).isInstanceOf(RefusedException.class);
    assertThat(phone.squad()).isEqualTo(before);
  }
}
