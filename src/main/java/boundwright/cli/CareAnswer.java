package boundwright.cli;

import boundwright.athlete.Athlete;
import boundwright.load.LegCare.MedicalHold;
import boundwright.load.LegCare.Pain;
import boundwright.load.LegCare;
import boundwright.store.Workbench;
import java.io.PrintWriter;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What the pain command and the hold command print; field by field in {@code docs/formats-json.md}. */
record CareAnswer(String athlete, boolean growing, @Nullable String firstSession, List<PainAnswer> pains, List<HoldAnswer> holds) {
  /** One pain. */
  record PainAnswer(long id, String date, String area, int level, @Nullable Boolean settled, boolean refer) {
    static PainAnswer of(Pain p) {
      return new PainAnswer(p.id(), p.date().toString(), p.area(), p.level(), p.settled(), p.refer());
    }
  }

  /** One medical hold. */
  record HoldAnswer(long id, String from, String note, boolean holdsToday, @Nullable String clearedBy, @Nullable String clearedOn) {
    static HoldAnswer of(MedicalHold h, LocalDate today) {
      LocalDate on = h.clearedOn();
      return new HoldAnswer(h.id(), h.from().toString(), h.note(), h.holds(today), h.clearedBy(), on == null ? null : on.toString());
    }
  }

  /** As it is kept now. */
  static CareAnswer of(Workbench bench, Athlete who, LocalDate today) {
    LegCare care = bench.care().care(who.id(), today);
    LocalDate first = care.firstSession();
    return new CareAnswer(
        who.name(),
        care.growing(),
        first == null ? null : first.toString(),
        care.pains().stream().map(PainAnswer::of).toList(),
        care.holds().stream().map(h -> HoldAnswer.of(h, today)).toList());
  }

  void print(PrintWriter out) {
    out.println(athlete + (growing ? ", growing" : ""));
    for (PainAnswer p : pains) {
      Boolean settled = p.settled();
      out.println(
          "  pain " + p.id() + ": " + p.date() + ", " + p.area() + ", " + p.level() + " of 10, "
              + (settled == null ? "not asked yet whether it settled" : settled ? "settled next morning" : "not settled next morning")
              + (p.refer() ? ", a sign to stop and refer" : ""));
    }
    for (HoldAnswer h : holds) {
      out.println(
          "  medical hold " + h.id() + ": from " + h.from() + (h.note().isEmpty() ? "" : ", " + h.note())
              + (h.clearedBy() == null
                  ? "; it lasts until a named clinician ends it"
                  : "; ended by " + h.clearedBy() + " from " + h.clearedOn() + " on"));
    }
    if (pains.isEmpty() && holds.isEmpty()) {
      out.println("  no pain in the last 60 days, no medical hold");
    }
  }
}
