package boundwright.store;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.athlete.Athlete;
import boundwright.clip.scan.FoundBytes;
import boundwright.demo.DemoSquad;
import boundwright.load.Answer;
import boundwright.load.Finding;
import boundwright.load.GuardOverride;
import boundwright.load.LegCare.Pain;
import boundwright.meet.Attempt;
import boundwright.meet.BoardDistance;
import boundwright.meet.Entrant;
import boundwright.meet.MeetRules;
import boundwright.meet.MeetSheet;
import boundwright.readiness.DrillFamily;
import boundwright.readiness.GateAnswer.Decision;
import boundwright.readiness.RungDecision;
import boundwright.season.InventedSeasons;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonRepository;
import boundwright.technique.LookRepository.SecondLook;
import java.nio.file.Path;
import java.util.Base64;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What an athlete is given is what goes when they are erased: nothing less, nothing of others. */
@SuppressWarnings("NullAway.Init") // JUnit fills the folder in
class AthleteFileTest {
  @TempDir Path dir;

  @Test
  void itHoldsRowForRowWhatErasingTakesAway() {
    try (Workbench w = Stores.open(dir, Fixtures.CLOCK)) {
      DemoSquad.fill(w);
      Athlete bram = w.athletes().byName("Bram Curlew").orElseThrow();
      Athlete tovi = w.athletes().byName("Tovi Plover").orElseThrow();
      fill(w, List.of(bram, tovi));
      InventedSeasons invented = new InventedSeasons(1);
      SeasonInput season = invented.inputOf(List.of(bram, tovi));
      long seasonId = w.seasons().add(season, "0123456789abcdef0123456789abcdef", Fixtures.CLOCK.instant()).id();
      w.seasons().publish(seasonId, invented.plan(season, 0), Fixtures.CLOCK.instant());
      w.seasons().publish(seasonId, invented.plan(season, 0), Fixtures.CLOCK.instant());
      for (Athlete a : List.of(bram, tovi)) {
        w.seasons().keepSecret(String.valueOf(a.id()).repeat(64), new SeasonRepository.CalendarKey(seasonId, a.id(), Fixtures.CLOCK.instant()));
      }
      Map<String, List<Map<String, @Nullable Object>>> kept = new AthleteFile(w).of(bram);
      assertThat(kept.keySet()).startsWith("athlete").doesNotContain("learned", "setting");
      assertThat(kept.toString()).contains("left shin of Bram Curlew").doesNotContain("Tovi");
      assertThat(kept.get("meet")).extracting(m -> String.valueOf(m.get("name"))).as("that of the test, and the one to come of the invented squad").contains("Invented Open").hasSize(2);
      assertThat(kept.get("clip_points"))
          .singleElement()
          .satisfies(p -> assertThat(Base64.getDecoder().decode(String.valueOf(p.get("bytes")))).isEqualTo(FoundBytes.of(FakeScan.FOUND)));
      assertThat(kept.get("second_look")).singleElement().satisfies(l -> assertThat(l).containsEntry("observer", "KS"));

      Map<String, Integer> before = counts(w);
      w.athletes().erase(bram.id());
      Map<String, Integer> after = counts(w);
      TreeSet<String> touched = new TreeSet<>();
      before.forEach(
          (table, rows) -> {
            int gone = rows - after.getOrDefault(table, 0);
            if (gone > 0 && !"learned".equals(table)) {
              touched.add(table);
              assertThat(kept.getOrDefault(table, List.of())).as(table).hasSize(gone);
            }
          });
      assertThat(touched).hasSizeGreaterThanOrEqualTo(25).contains("season_member", "season_year", "calendar_secret");
      TreeSet<String> told = new TreeSet<>(kept.keySet());
      told.removeAll(List.of("meet", "season", "season_version"));
      assertThat(told).isEqualTo(touched);
    }
  }

  /** Something of every kind beside reps. */
  static void fill(Workbench w, List<Athlete> whose) {
    MeetSheet meet =
        w.meets().add(MeetSheet.of("Invented Open", Fixtures.TODAY, BoardDistance.own("own", 11), null, MeetRules.DEFAULT));
    for (Athlete a : whose) {
      Entrant entrant = w.meets().enter(meet.id(), new Entrant(0, a.id(), a.name()));
      w.meets().add(meet.id(), entrant.id(), Attempt.valid(a.name(), 1, 13.2), "");
      w.looks().keep(new SecondLook(w.reps().inOrder(a.id()).get(0).id(), "KS", List.of()));
      w.care().setGrowing(a.id(), true, null);
      w.care().addPain(a.id(), new Pain(0, Fixtures.TODAY, "left shin of " + a.name(), 6, null, true));
      w.care().keep(new GuardOverride(0, a.id(), Fixtures.TODAY, Finding.Rule.RAMP, Answer.CAUTION, "said", "a reason for it"));
      SqlClips clips = new SqlClips(w.database());
      long clip = clips.add(SqlClipsTest.plain(a.id())).id();
      clips.found(clip, FakeScan.FOUND);
      clips.setup(clip, SqlClipsTest.MARKED);
      clips.corrections(clip, SqlClipsTest.EVERY_KIND);
      w.ladder().keep(new RungDecision(0, a.id(), DrillFamily.ALTERNATE, Fixtures.TODAY, 4, 6, Decision.ADD_TWO_STEPS, ""));
    }
  }

  static Map<String, Integer> counts(Workbench w) {
    Map<String, Integer> out = new HashMap<>();
    w.database().counts().rows().forEach((table, rows) -> out.put(table, Math.toIntExact(rows)));
    return out;
  }
}
