package boundwright.card.plain;

import boundwright.picture.Drawn;
import boundwright.picture.TestPicture;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.Notes;
import boundwright.readiness.TestError;
import boundwright.readiness.TestKind;
import boundwright.readiness.TestScore;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.SortedSet;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * How somebody's scores of one test went on. A change is called one only when it is more than the test can miss by: beyond its detectable change
 * (95 %, Hopkins 2000), else nothing can be told.
 *
 * @param own their scores done alike with the newest, oldest first, at least one
 * @param squad all scores of all athletes
 * @param error of this test, or null while it is not known
 */
record TestProgress(List<TestScore> own, List<TestScore> squad, @Nullable TestError error) {
  private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM yyyy", Locale.ENGLISH);
  private static final int YEAR_DAYS = 366;
  /** Taken again rather than once, of the whole athlete rather than of one leg, often rather than seldom, lately rather than long ago. */
  static final Comparator<TestProgress> TELLING =
      Comparator.comparing((TestProgress p) -> p.own.size() > 1)
          .thenComparing(p -> p.newest().kind().leg().isEmpty())
          .thenComparing(p -> p.own.size())
          .thenComparing(p -> p.newest().date());

  TestProgress {
    own = List.copyOf(own);
  }

  /** Each test and run-up that this athlete has a score of. */
  static List<TestProgress> of(List<TestScore> squad, long athlete) {
    List<TestProgress> out = new ArrayList<>();
    for (TestKind kind : TestKind.values()) {
      SortedSet<Integer> steps = new TreeSet<>();
      squad.stream().filter(s -> s.athleteId() == athlete && s.kind() == kind).forEach(s -> steps.add(s.approachSteps()));
      for (int from : steps) {
        List<TestScore> all =
            squad.stream()
                .filter(s -> s.athleteId() == athlete && s.kind() == kind && s.approachSteps() == from)
                .sorted(Comparator.comparing(TestScore::date).thenComparing(TestScore::id))
                .toList();
        TestScore newest = all.get(all.size() - 1);
        out.add(
            new TestProgress(
                all.stream().filter(s -> s.comparableWith(newest) && s.date().isAfter(newest.date().minusDays(YEAR_DAYS))).toList(), squad,
                TestError.of(squad, kind, from, false).orElse(null)));
      }
    }
    return out;
  }

  private TestScore newest() {
    return own.get(own.size() - 1);
  }

  /** In a sentence or three. */
  String inWords(LengthUnit unit) {
    TestScore now = newest();
    TestScore then = own.get(0);
    String said = Notes.capital(now.kind().plain()) + ": " + written(now.value(), unit) + " on " + DAY.format(now.date()) + ".";
    if (own.size() < 2 || then.date().equals(now.date())) {
      return said + " Taken again in some weeks, it will tell of progress.";
    }
    double change = now.value() - then.value();
    String from = " On " + DAY.format(then.date()) + " it was " + written(then.value(), unit) + ".";
    if (error == null) {
      return said + from + " How exact this test is here is not known yet, so it cannot be said whether that is progress.";
    }
    if (Math.abs(change) <= error.detectableChange()) {
      return said + from + " The difference is within what the test can miss by (" + written(error.detectableChange(), unit) + "), so no change can be told.";
    }
    return said + from + " That is " + written(Math.abs(change), unit) + (change > 0 ? " more" : " less") + ", and more than the test can miss by ("
        + written(error.detectableChange(), unit) + ").";
  }

  Drawn<TestPicture> picture(LengthUnit unit) {
    return Drawn.of(form -> TestPicture.plain(own, error, unit, form));
  }

  private String written(double value, LengthUnit unit) {
    return newest().kind().unit() == TestKind.Unit.METRES ? unit.write(value) : String.format(Locale.ROOT, "%.2f %s", value, newest().kind().unit().sign());
  }
}
