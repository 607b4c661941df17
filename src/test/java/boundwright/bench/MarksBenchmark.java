package boundwright.bench;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.athlete.Profile;
import boundwright.flight.FlightModel;
import boundwright.flight.Rep;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.runway.CoachSettings;
import boundwright.runway.MarkAdvice;
import boundwright.store.Workbench;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;

/**
 * Two promises: marks in under 50 ms once warm, and 100 reps learned in under 100 ms. Run it with {@code bench/marks}, which
 * is
 *
 * <pre>{@code
 * mvn -q -B test-compile dependency:build-classpath -DincludeScope=test -Dmdep.outputFile=target/test.classpath
 * java -cp target/test-classes:target/classes:$(cat target/test.classpath) org.openjdk.jmh.Main MarksBenchmark
 * }</pre>
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
public class MarksBenchmark {
  private static final Clock CLOCK = Clock.fixed(Instant.parse("2026-05-14T10:00:00Z"), ZoneOffset.UTC);
  private static final Sequence SEQUENCE = Sequence.parse("RRL RRL");

  private @Nullable Workbench bench;
  private Athlete athlete = new Athlete(0, "Invented One", Level.INTERMEDIATE, Foot.RIGHT, 4);
  private List<Rep> reps = List.of();

  /** A store with one athlete and 100 reps. */
  @Setup
  public void fill() throws IOException {
    Path folder = Files.createTempDirectory("boundwright-bench");
    Workbench opened = Workbench.open(folder, CLOCK);
    athlete = opened.athletes().add(athlete);
    reps = new InventedReps(7).of(athlete.id(), 100, 20, LocalDate.now(CLOCK));
    opened.logbook().logAll(reps);
    bench = opened;
  }

  /** Closes the store. */
  @TearDown
  public void close() {
    if (bench != null) {
      bench.close();
    }
  }

  /** From the store to the answer, as a page or a command asks it. */
  @Benchmark
  public MarkAdvice marksOnceWarm() {
    if (bench == null) {
      throw new IllegalStateException("not filled");
    }
    return bench.advisor().advise(athlete, SEQUENCE, 4, CoachSettings.DEFAULT);
  }

  /** The learning alone, from the prior. */
  @Benchmark
  public FlightModel learnHundredReps() {
    FlightModel model = FlightModel.prior(Profile.bare(athlete));
    for (Rep rep : reps) {
      model = model.learn(rep);
    }
    return model;
  }
}
