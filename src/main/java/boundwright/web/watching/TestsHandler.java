package boundwright.web.watching;

import boundwright.athlete.Athlete;
import boundwright.athlete.Surface;
import boundwright.picture.TestPicture;
import boundwright.picture.strip.RunwayStrip;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import boundwright.readiness.LegTests;
import boundwright.readiness.TestError;
import boundwright.readiness.TestKind;
import boundwright.readiness.TestProtocol;
import boundwright.readiness.TestScore;
import boundwright.readiness.TestTrend;
import boundwright.store.Workbench;
import boundwright.web.page.Addresses;
import boundwright.web.page.Entries;
import boundwright.web.page.Form;
import boundwright.web.page.Gate;
import boundwright.web.page.Pages;
import boundwright.web.page.Turned;
import boundwright.web.page.Written;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The tests of one athlete: entering, and what they say with their error. */
public final class TestsHandler {
  private final Workbench bench;
  private final Pages pages;
  private final Gate gate;

  public TestsHandler(Workbench bench, Pages pages, Gate gate) {
    this.bench = bench;
    this.pages = pages;
    this.gate = gate;
  }

  /** The page. */
  public void show(Context ctx) {
    String said =
        switch (Form.text(ctx, "said")) {
          case "added" -> "The score is kept with its protocol, and the first guess at the flights rests on it too.";
          case "removed" -> "The score is taken out.";
          default -> "";
        };
    page(ctx, Written.said(said));
  }

  /** Adds a score. */
  public void add(Context ctx) {
    Athlete athlete = Addresses.athlete(ctx, bench);
    try {
      TestScore score = read(ctx, athlete);
      String token = Entries.token(ctx, "enter it again");
      bench.once(token, () -> bench.tests().add(score).id());
      ctx.redirect("/athlete/" + athlete.id() + "/tests?said=added&kind=" + score.kind().name(), HttpStatus.SEE_OTHER);
    } catch (RefusedException e) {
      page(ctx, Written.refused(ctx, "test", String.valueOf(e.getMessage())));
    }
  }

  /** Takes a score out. */
  public void remove(Context ctx) {
    Athlete athlete = Addresses.athlete(ctx, bench);
    String number = ctx.pathParam("number");
    if (!number.matches("\\d{1,18}")) {
      throw new Turned(404, "No score has the number " + number + ".");
    }
    bench.tests().remove(athlete.id(), Long.parseLong(number));
    ctx.redirect("/athlete/" + athlete.id() + "/tests?said=removed", HttpStatus.SEE_OTHER);
  }

  private TestScore read(Context ctx, Athlete athlete) {
    LengthUnit unit = bench.settings().settings().unit();
    TestKind kind = Form.oneOf(TestKind.class, "test", Form.text(ctx, "kind"));
    boolean metres = kind.unit() == TestKind.Unit.METRES;
    String steps = Form.text(ctx, "steps");
    String runUp = Form.text(ctx, "runUp");
    return new TestScore(
        0,
        athlete.id(),
        kind,
        steps.isEmpty() ? 0 : Form.whole("number of steps", steps),
        metres ? unit.read("score", Form.text(ctx, "value")) : Form.number("speed", Form.text(ctx, "value")),
        runUp.isEmpty() ? null : unit.read("length of the run-up", runUp),
        Form.date(Form.text(ctx, "date"), today()),
        new TestProtocol(
            Form.oneOf(Surface.class, "surface", Form.text(ctx, "surface")),
            Form.text(ctx, "shoes"),
            Form.text(ctx, "start"),
            Form.whole("number of tries", Form.text(ctx, "bestOf")),
            Form.text(ctx, "notes")));
  }

  private void page(Context ctx, Written written) {
    Athlete athlete = Addresses.athlete(ctx, bench);
    List<TestScore> scores = new ArrayList<>(bench.tests().of(athlete.id()));
    Collections.reverse(scores);
    Map<String, List<TestScore>> byTest = new LinkedHashMap<>();
    scores.forEach(s -> byTest.computeIfAbsent(s.kind() + " " + s.approachSteps(), k -> new ArrayList<>()).add(s));
    List<TestsView.Block> blocks = byTest.values().stream().map(this::block).toList();
    TestKind kind = kind(ctx, scores);
    TestProtocol protocol =
        scores.stream()
            .filter(s -> s.kind() == kind)
            .findFirst()
            .map(TestScore::protocol)
            .orElseGet(() -> TestProtocol.usual(kind, bench.settings().settings().facility().surface()));
    TestsView view =
        new TestsView(
            athlete, blocks, LegTests.of(scores, squad(TestKind.SINGLE_LEG_RIGHT, TestKind.SINGLE_LEG_LEFT)), kind, protocol, bench.settings().settings().unit(), written, gate.fresh(), today());
    pages.show(ctx, written.status(), "watching/tests", "Tests of " + athlete.name(), "squad", view);
  }

  private static TestKind kind(Context ctx, List<TestScore> newestFirst) {
    String asked = Form.text(ctx, "kind");
    for (TestKind k : TestKind.values()) {
      if (k.name().equals(asked)) {
        return k;
      }
    }
    return newestFirst.isEmpty() ? TestKind.STANDING_TRIPLE : newestFirst.get(0).kind();
  }

  private TestsView.Block block(List<TestScore> own) {
    TestScore latest = own.get(0);
    List<TestScore> squad = bench.tests().all(latest.kind());
    TestError error = TestError.of(squad, latest.kind(), latest.approachSteps(), false).orElse(null);
    TestTrend trend = null;
    String words;
    try {
      trend = TestTrend.of(squad, latest.kind(), latest.approachSteps());
      words = trend.model().inWords();
    } catch (RefusedException e) {
      words = String.valueOf(e.getMessage());
    }
    LengthUnit unit = bench.settings().settings().unit();
    return new TestsView.Block(
        latest.kind(), latest.approachSteps(), List.copyOf(own), error, TestPicture.of(own, error, trend, unit, RunwayStrip.Width.WIDE),
        TestPicture.of(own, error, trend, unit, RunwayStrip.Width.NARROW), words);
  }

  private List<TestScore> squad(TestKind... kinds) {
    return Arrays.stream(kinds).flatMap(k -> bench.tests().all(k).stream()).toList();
  }

  private LocalDate today() {
    return LocalDate.now(bench.clock());
  }
}
