package boundwright.demo;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.approach.aim.AimAnswer;
import boundwright.approach.full.FullRunAnswer;
import boundwright.approach.weather.Weather;
import boundwright.athlete.Athlete;
import boundwright.jump.Event;
import boundwright.jump.PhaseAnswer;
import boundwright.meet.Entrant;
import boundwright.meet.MeetNow;
import boundwright.meet.MeetSheet;
import boundwright.meet.chance.ChanceAnswer;
import boundwright.meet.chance.LikelyWind;
import boundwright.meet.day.DaySheet;
import boundwright.quantity.LengthUnit;
import boundwright.store.Fixtures;
import boundwright.store.Workbench;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The invented jumps and the invented meet give every screen something to show, the same every time. */
@SuppressWarnings("NullAway.Init") // JUnit fills the folder in
class DemoJumpsTest {
  @TempDir Path dir;

  private Workbench open(String name) {
    Workbench w = Workbench.open(dir.resolve(name), Fixtures.CLOCK);
    DemoSquad.fill(w);
    return w;
  }

  private static MeetSheet today(Workbench w) {
    return w.meets().all().stream().filter(m -> m.event() == Event.TRIPLE_JUMP && m.date().equals(Fixtures.TODAY)).findFirst().orElseThrow();
  }

  private static List<Object> everything(Workbench w) {
    List<Object> out = new ArrayList<>(w.meets().all());
    for (Athlete a : w.athletes().all()) {
      out.addAll(w.jumpLog().jumps(a.id()));
      out.addAll(w.runThroughs().runThroughs(a.id()));
      out.addAll(w.boardLog().gaps(a.id()));
    }
    return out;
  }

  @Test
  void itIsTheSameEveryTime() {
    try (Workbench one = open("one");
        Workbench two = open("two")) {
      assertThat(everything(one)).hasSizeGreaterThan(100).isEqualTo(everything(two));
    }
  }

  @Test
  void someCanBeToldAndOfSomeTheDataCannotTell() {
    try (Workbench w = open("one")) {
      List<PhaseAnswer> phases = w.athletes().all().stream().map(a -> w.phaseDesk().answer(a)).toList();
      assertThat(phases).anyMatch(p -> p.best() != null && p.best().told()).anyMatch(p -> p.cannotTell() != null);
      assertThat(phases).anyMatch(p -> p.jumps().isEmpty()).anyMatch(p -> p.jumps().size() >= 8);
      List<AimAnswer> aims = w.athletes().all().stream().map(a -> w.aimDesk().answer(a, null, 6)).toList();
      assertThat(aims).anyMatch(a -> a.advice() != null && a.advice().told()).anyMatch(a -> a.cannotTell() != null);
      Athlete linnea = w.athletes().byName("Linnea Saltwort").orElseThrow();
      assertThat(w.approachDesk().answer(linnea, null, null, null).spread()).isNotNull();
    }
  }

  @Test
  void fullRunWeatherChanceAndTheDayHaveAnExample() {
    try (Workbench w = open("one")) {
      Athlete bram = w.athletes().byName("Bram Curlew").orElseThrow();
      FullRunAnswer full = w.fullRunDesk().answer(bram, 16, Fixtures.TODAY);
      assertThat(full.words(LengthUnit.METRES)).contains(" from 8 steps is about ").contains(" from 16.");
      assertThat(full.weather()).isNotNull();
      assertThat(w.weather().days()).hasSizeGreaterThan(3).anyMatch(d -> d.weather().from() == Weather.From.HEAD).anyMatch(d -> Boolean.TRUE.equals(d.weather().wet()));
      ChanceAnswer chance = w.chanceDesk().answer(bram, w.fullRunDesk().answer(bram, null, Fixtures.TODAY), 13.6, Fixtures.TODAY.plusDays(60), List.of(), LikelyWind.USUAL, Fixtures.TODAY);
      assertThat(Objects.requireNonNull(chance.chance()).byThen()).isBetween(0.01, 0.99);
      assertThat(chance.foulsOwn()).isTrue();
      DaySheet day = w.dayDesk().sheet(today(w));
      assertThat(day.moments()).hasSizeGreaterThan(5);
      assertThat(day.marks()).hasSize(3);
      // an athlete without a timed or logged full run is told of in words
      assertThat(w.athletes().all().stream().map(a -> w.fullRunDesk().answer(a, null, Fixtures.TODAY))).anyMatch(a -> a.missing() != null);
    }
  }

  @Test
  void theMeetIsInventedAndUnderWayInTheRoundThatDecidesWhoGoesOn() {
    try (Workbench w = open("one")) {
      // another triple jump is still to come
      assertThat(w.meets().all()).filteredOn(m -> m.event() == Event.TRIPLE_JUMP).hasSize(2);
      MeetSheet sheet = today(w);
      assertThat(sheet.name()).contains("invented");
      assertThat(sheet.date()).isEqualTo(Fixtures.TODAY);
      assertThat(sheet.entrants()).filteredOn(Entrant::isRival).allMatch(e -> e.name().startsWith("Bib "));
      MeetNow now = w.meetDesk().now(sheet);
      assertThat(now.round()).isEqualTo(3);
      assertThat(now.next()).isEqualTo("Linnea Saltwort");
      assertThat(now.placings()).hasSize(10);
    }
  }
}
