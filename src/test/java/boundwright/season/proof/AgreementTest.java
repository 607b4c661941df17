package boundwright.season.proof;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.season.MadeUpSeason;
import boundwright.season.SeasonInput;
import boundwright.season.Venue;
import boundwright.season.solve.Joint;
import boundwright.season.solve.SeasonPlanner;
import boundwright.season.year.Choice;
import boundwright.season.year.DailyModel;
import boundwright.season.year.Level;
import boundwright.season.year.YearProblem;
import java.time.Duration;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The model of CP-SAT (OR-Tools 9.15, a reference library) scores the same days as the program does, and plans no better than it. */
class AgreementTest {
  private static final long SEED = 20261129;

  @Test
  void modelAndLineGiveTheSameScoreForTheSameDays() {
    Random random = new Random(SEED);
    int refused = 0;
    int kept = 0;
    for (int round = 0; round < 8; round++) {
      SeasonInput input = MadeUpSeason.of(2, 6, SEED + round);
      List<YearProblem> problems = new SeasonPlanner(input, MadeUpSeason.climbs(input, 3), null, 1).problems();
      int[] room = input.venues().stream().mapToInt(Venue::athletes).toArray();
      room[0] = 1;
      Joint joint = new Joint(problems, input.venues().stream().map(v -> v.key().equals("pit") ? narrow(v) : v).toList());
      boolean keep = round % 2 == 0;
      for (int a = 0; a < 2; a++) {
        for (int t = 0; t < problems.get(a).days(); t++) {
          List<Choice> choices = problems.get(a).choices(t);
          for (int i = 0; i < 4 && choices.size() > 1 && random.nextInt(keep ? 8 : 3) > 0; i++) {
            joint.choose(a, t, choices.get(random.nextInt(choices.size())));
            if (!keep || joint.total()[Level.REFUSED.at()] == 0) {
              break;
            }
            joint.choose(a, t, choices.get(0));
          }
        }
      }
      DailyModel model = new DailyModel(problems, room);
      for (int a = 0; a < 2; a++) {
        for (int t = 0; t < problems.get(a).days(); t++) {
          model.fix(a, t, joint.line(a).chosen(t));
        }
      }
      for (int a = 0; a < 2; a++) {
        DailyModel lean = DailyModel.refusals(problems.get(a));
        for (int t = 0; t < problems.get(a).days(); t++) {
          lean.fix(0, t, joint.line(a).chosen(t));
        }
        assertThat(lean.scored() == null).as("seed %d athlete %d, refusals alone", SEED + round, a).isEqualTo(joint.line(a).total()[Level.REFUSED.at()] > 0);
      }
      long[] scored = model.scored();
      long[] total = joint.total();
      if (total[Level.REFUSED.at()] > 0) {
        refused++;
        assertThat(scored).as("seed %d refuses", SEED + round).isNull();
      } else {
        kept++;
        assertThat(scored).as("seed %d", SEED + round).containsExactly(total[Level.WISHES.at()], total[Level.OFF.at()], total[Level.CAUTIONS.at()]);
      }
    }
    assertThat(refused).isGreaterThan(2);
    assertThat(kept).isGreaterThan(2);
  }

  private static Venue narrow(Venue v) {
    return new Venue(v.key(), v.name(), v.surface(), v.sand(), 1, v.hours(), v.closed());
  }

  @Test
  void oneAthleteIsPlannedNoWorseThanByCpSat() {
    SeasonInput input = MadeUpSeason.of(1, 4, 1);
    SeasonPlanner planner = new SeasonPlanner(input, MadeUpSeason.climbs(input, 4), null, 1);
    long[] ours = planner.plan(Duration.ofSeconds(3), t -> {}).joint().total();
    List<DailyModel.Solved> solved =
        new DailyModel(planner.problems(), input.venues().stream().mapToInt(Venue::athletes).toArray()).levels(ours, 60);
    assertThat(ours[Level.REFUSED.at()]).isZero();
    assertThat(solved).as("levels that CP-SAT proves").hasSize(3).allMatch(DailyModel.Solved::proven);
    for (int k = 0; k < solved.size(); k++) {
      long mine = ours[Level.WISHES.at() + k];
      assertThat(mine).as("level %d, bound", k).isGreaterThanOrEqualTo(solved.get(k).bound());
      assertThat(mine).as("level %d: %s", k, solved).isLessThanOrEqualTo(solved.get(k).best());
    }
  }
}
