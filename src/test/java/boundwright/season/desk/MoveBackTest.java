package boundwright.season.desk;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.demo.DemoSeason;
import boundwright.demo.DemoSquad;
import boundwright.season.Member;
import boundwright.season.SeasonInput;
import boundwright.season.PlannedDay;
import boundwright.season.SeasonPlan;
import boundwright.season.SessionKind;
import boundwright.season.solve.SeasonWork;
import boundwright.season.why.Move;
import boundwright.store.Workbench;
import boundwright.store.season.SeasonFile;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Where the page says that a session may be put, the plan can be published with it there, also of somebody on the way back. */
class MoveBackTest {
  private static final Clock DAY = Clock.fixed(Instant.parse("2026-05-12T09:00:00Z"), ZoneOffset.UTC);
  private static final int WEEKS = 4;

  @Test
  void whereASessionMayGoThePlanCanBePublished(@TempDir Path dir) throws IOException {
    try (Workbench bench = Workbench.open(dir, DAY)) {
      DemoSquad.fill(bench);
      SeasonInput all = DemoSeason.from(LocalDate.now(DAY).plusDays(1), bench.care().guard());
      List<Member> anyDay =
          all.squad().stream()
              .map(m -> new Member(m.athlete(), m.growing(), m.firstSession(), m.steps(), m.fullSteps(), EnumSet.allOf(DayOfWeek.class), m.peakWeek(), null, List.of(), List.of(), List.of(), m.past()))
              .toList();
      SeasonInput four = new SeasonInput(all.name(), all.first(), all.first().plusWeeks(WEEKS).minusDays(1), List.of(), List.of(), all.venues(), anyDay, all.rules());
      byte[] file = SeasonFile.write(four, bench.care().guard(), "").getBytes(StandardCharsets.UTF_8);
      SeasonInput input = SeasonFile.read(file, bench.care().guard(), (name, written) -> bench.athletes().byName(name).orElseThrow().id());
      SeasonDesk desk =
          new SeasonDesk(bench.seasons(), () -> new SeasonWork(bench.stays(), bench.workLog(), bench.care(), bench.ladder().rules().stay()), DAY, new Random(1));
      long id = desk.keep(input);
      SeasonPlan plan = bench.seasons().publish(id, desk.work().planner(desk.work().held(input, desk.today()), null, desk.today(), 1).plan(Duration.ZERO, t -> {}).plan(), DAY.instant());
      assertThat(desk.against(input, plan)).as("the plan itself").isEmpty();
      Proposals proposals = new Proposals();
      MoveDesk moves = new MoveDesk(desk, proposals);
      long back = input.squad().stream().filter(m -> !bench.care().care(m.id(), desk.today()).backs().isEmpty()).findFirst().orElseThrow().id();
      List<String> wrong = new ArrayList<>();
      int tried = 0;
      for (PlannedDay d : plan.of(back).orElseThrow().days()) {
        if (d.session().kind() == SessionKind.MEET) {
          continue;
        }
        LocalDate monday = d.date().minusDays(d.date().getDayOfWeek().getValue() - 1L);
        for (Move m : moves.answers(id, back, d.date(), IntStream.range(0, 7).mapToObj(monday::plusDays).toList()).moves()) {
          if (m.answer() == Move.Answer.ALLOWED || m.answer() == Move.Answer.COSTS) {
            Proposal put = moves.put(id, 0, back, d.date(), m.date());
            tried++;
            put.against().forEach(a -> wrong.add(d.date() + " to " + m.date() + ": " + a));
            proposals.drop(id, put.number());
          }
        }
      }
      assertThat(tried).isGreaterThan(10);
      assertThat(wrong).isEmpty();
    }
  }
}
