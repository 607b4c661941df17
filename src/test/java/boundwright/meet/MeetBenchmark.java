package boundwright.meet;

import boundwright.approach.aim.AimPolicy;
import boundwright.approach.aim.Goal;
import boundwright.approach.aim.JumpForm;
import boundwright.flight.ContactModel;
import boundwright.jump.BestShares;
import boundwright.jump.ContactLine;
import boundwright.jump.ContactPrior;
import boundwright.jump.JumpFixtures;
import boundwright.jump.JumpProfile;
import boundwright.jump.MeasuredJump;
import boundwright.jump.Shares;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * Issue 4: the aim policy for six attempts under 50 ms, the phase optimum with its plateau under 200 ms, both warm.
 *
 * <p>Run: {@code mvn -q test-compile dependency:build-classpath -Dmdep.outputFile=target/cp} and then {@code java -cp
 * target/classes:target/test-classes:$(cat target/cp) org.openjdk.jmh.Main MeetBenchmark}.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 3, time = 1)
@Fork(1)
public class MeetBenchmark {
  private final List<MeasuredJump> jumps = JumpFixtures.jumps(new ContactModel.ByGain(-1.2, .6), 20, new Random(1), .15);
  private final ContactLine line = ContactLine.learn(JumpFixtures.contacts(jumps), ContactPrior.JUDGED);
  private final JumpProfile profile = JumpProfile.of(jumps);

  /** The policy and its first aim. */
  @Benchmark
  public AimPolicy.Advice aimPolicyOfSix() {
    return AimPolicy.of(new JumpForm(14, .20, .10), new Goal.Longest(0), 6).advise(6, null);
  }

  /** The optimum, the plateau and its outline. */
  @Benchmark
  public List<Shares> bestSharesWithPlateau() {
    return BestShares.of(line, profile, profile.shortestStep_m(), 2, new Random(1)).plateauOutline();
  }
}
