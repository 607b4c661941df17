package boundwright.season.desk;

import boundwright.athlete.Athlete;
import boundwright.load.GuardSettings;
import boundwright.season.MadeUpSeason;
import boundwright.season.PlannedDay;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.SessionKind;
import boundwright.season.solve.SeasonWork;
import boundwright.season.why.Move;
import boundwright.store.Workbench;
import boundwright.store.season.SeasonFile;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.stream.IntStream;

/** How long the rules' answers to a session that is picked up take, on the database as the page asks: {@code bench/move 24 44 100 1}. */
public final class MoveTrial {
  private static final ThreadMXBean CPU = ManagementFactory.getThreadMXBean();

  private MoveTrial() {}

  /** Athletes, weeks, sessions picked up, seed. */
  public static void main(String[] args) throws IOException {
    int athletes = Integer.parseInt(args[0]);
    int weeks = Integer.parseInt(args[1]);
    int cases = Integer.parseInt(args[2]);
    long seed = Long.parseLong(args[3]);
    SeasonInput made = MadeUpSeason.of(athletes, weeks, seed);
    Clock clock = Clock.fixed(made.first().atTime(LocalTime.NOON).toInstant(ZoneOffset.UTC), ZoneOffset.UTC);
    Path folder = Files.createTempDirectory("boundwright-move");
    try (Workbench bench = Workbench.open(folder, clock)) {
      byte[] file = SeasonFile.write(made, GuardSettings.DEFAULT, "").getBytes(StandardCharsets.UTF_8);
      made.squad().forEach(m -> bench.athletes().add(new Athlete(0, m.name(), m.athlete().level(), m.athlete().takeOffFoot(), m.athlete().rung())));
      SeasonInput input = SeasonFile.read(file, bench.care().guard(), (name, written) -> bench.athletes().byName(name).orElseThrow().id());
      SeasonDesk desk =
          new SeasonDesk(bench.seasons(), () -> new SeasonWork(bench.stays(), bench.workLog(), bench.care(), bench.ladder().rules().stay()), clock, new Random(seed));
      long id = desk.keep(input);
      SeasonPlan plan = bench.seasons().publish(id, desk.work().planner(input, null, desk.today(), seed).plan(Duration.ZERO, t -> {}).plan(), clock.instant());
      Proposals proposals = new Proposals();
      MoveDesk moves = new MoveDesk(desk, proposals);
      Random random = new Random(seed);
      List<Double> wall = new ArrayList<>();
      List<Double> cpu = new ArrayList<>();
      Map<Move.Answer, Integer> answers = new EnumMap<>(Move.Answer.class);
      for (int i = 0; i < cases; i++) {
        SeasonPlan.Year y = plan.years().get(random.nextInt(athletes));
        List<PlannedDay> days = y.days().stream().filter(d -> d.session().kind() != SessionKind.MEET).toList();
        LocalDate from = days.get(random.nextInt(days.size())).date();
        LocalDate monday = from.minusDays(from.getDayOfWeek().getValue() - 1L);
        List<LocalDate> week = IntStream.range(0, 7).mapToObj(monday::plusDays).toList();
        // a write in between, as when somebody logs a rep
        bench.settings().keep(bench.settings().kept());
        long start = System.nanoTime();
        long busy = CPU.getCurrentThreadCpuTime();
        moves.answers(id, y.athleteId(), from, week).moves().forEach(m -> answers.merge(m.answer(), 1, Integer::sum));
        wall.add((System.nanoTime() - start) / 1e6);
        cpu.add((CPU.getCurrentThreadCpuTime() - busy) / 1e6);
      }
      System.out.printf(Locale.ROOT, "the very first: %.0f ms, of a processor %.0f%n", wall.get(0), cpu.get(0));
      print("time", wall);
      print("of a processor", cpu);
      System.out.println(answers);
    }
  }

  private static void print(String what, List<Double> ms) {
    Collections.sort(ms);
    System.out.printf(Locale.ROOT, "%s: median %.1f ms, 90 %% %.1f, most %.1f%n", what, ms.get(ms.size() / 2), ms.get(ms.size() * 9 / 10), ms.get(ms.size() - 1));
  }
}
