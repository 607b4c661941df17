package boundwright.card.plain;

import boundwright.athlete.Athlete;
import boundwright.card.plain.PlainReport.Part;
import boundwright.flight.RepStore;
import boundwright.quantity.Notes;
import boundwright.readiness.JudgedReps;
import boundwright.technique.FaultAdvice;
import boundwright.technique.FaultCatalogue;
import boundwright.technique.FaultTrends;
import boundwright.technique.JudgedRep;
import boundwright.technique.LookRepository;
import boundwright.technique.ShareTrend;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What an athlete is to work on: the cues for what was seen most often in the last weeks, and what became rarer. */
final class WorkOn {
  private static final int MOST = 3;

  private final RepStore reps;
  private final LookRepository looks;

  WorkOn(RepStore reps, LookRepository looks) {
    this.reps = reps;
    this.looks = looks;
  }

  Part part(Athlete athlete, LocalDate today) {
    FaultCatalogue catalogue = new FaultCatalogue(looks.ownFaults(), looks.teaching().anywhere());
    List<JudgedRep> judged = JudgedReps.readable(reps.since(athlete.id(), today.minusWeeks(PlainReports.WEEKS).plusDays(1))).judged();
    if (judged.isEmpty()) {
      return Part.of("What to work on", List.of("No rep was looked at in the last " + PlainReports.WEEKS + " weeks. Ask the coach to look at some."));
    }
    List<FaultTrends.Course> courses =
        FaultTrends.of(judged).stream().flatMap(t -> t.courses().stream()).sorted(Comparator.comparingInt(FaultTrends.Course::seen).reversed()).toList();
    Map<String, String> said = new LinkedHashMap<>();
    for (FaultTrends.Course c : courses) {
      if (c.seen() > 0 && said.size() < MOST) {
        catalogue.byKey(c.key()).ifPresent(a -> said.putIfAbsent(a.key(), line(a, c)));
      }
    }
    List<String> lines = new ArrayList<>(said.values());
    if (lines.isEmpty()) {
      lines.add("No fault was seen in the " + Notes.counted(judged.size(), "rep") + " looked at. Keep it so.");
    }
    return Part.of("What to work on", lines);
  }

  private static String line(FaultAdvice advice, FaultTrends.Course course) {
    ShareTrend.Direction direction = course.trend().direction();
    String trend = direction == ShareTrend.Direction.TOO_FEW ? "" : ", " + direction.label();
    return "“" + advice.say() + "” (" + advice.label() + ": in " + course.seen() + " of " + course.judged() + " reps looked at" + trend + ")";
  }
}
