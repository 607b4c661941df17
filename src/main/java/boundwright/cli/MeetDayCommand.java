package boundwright.cli;

import boundwright.card.CardPdf;
import boundwright.card.MeetDayCard;
import boundwright.card.Paper;
import boundwright.demo.DemoSquad;
import boundwright.meet.MeetSheet;
import boundwright.meet.day.DaySheet;
import boundwright.meet.day.MeetDay;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The sheet of a meet's day. */
@Command(
    name = "day",
    description = {
      "The day of a meet: warm-up counted back from the call room, the order, the likely wind, and each start mark moved for",
      "it. With --starts or another time or wind it is kept first; with --out it is written as a PDF.",
      "Example: boundwright meet day --meet 3 --starts 14:30 --wind 1.5 --give 1 --out saturday.pdf%n"
    })
final class MeetDayCommand implements Callable<Integer> {
  private final BoundwrightCommand top;

  @Mixin private MeetOptions options = new MeetOptions();

  @Option(names = "--starts", paramLabel = "TIME", description = "First attempt of the competition, as 14:30.")
  private @Nullable String starts;

  @Option(names = "--call-room", paramLabel = "MIN", description = "Minutes before that the call room closes. Default: 30.")
  private @Nullable Integer callRoom;

  @Option(names = "--warm-up", paramLabel = "MIN", description = "Minutes of warm-up before the call room. Default: 60.")
  private @Nullable Integer warmUp;

  @Option(names = "--wind", paramLabel = "M/S", description = "Likely wind along the runway [m/s], + from behind.")
  private @Nullable Double wind;

  @Option(names = "--give", paramLabel = "M/S", description = "It lies so near to that nine times in ten [m/s]. Default: 2.")
  private @Nullable Double give;

  @Option(names = "--no-wind", description = "No wind is expected any more: the marks are the usual ones.")
  private boolean noWind;

  @Option(names = "--note", paramLabel = "WORDS", description = "Your words for the day.")
  private @Nullable String note;

  @Option(names = "--out", paramLabel = "FILE.pdf", description = "Write the sheet as a PDF.")
  private @Nullable String out;

  @Option(names = "--paper", paramLabel = "SIZE", description = "A5 or A4. Default: A5.")
  private String paper = "A5";

  @Option(names = "--force", description = "Replace the file if it is there.")
  private boolean force;

  MeetDayCommand(BoundwrightCommand top) {
    this.top = top;
  }

  @Override
  public Integer call() {
    Surroundings s = top.surroundings();
    Path file = out == null ? null : s.path(out);
    Paper size = Choices.choice("paper", paper, List.of(Paper.values()), Paper::name);
    if (file != null) {
      OutFile.check(file, force);
    }
    try (Workbench bench = options.open(s)) {
      MeetSheet sheet = options.look(bench, s.today());
      if (starts != null || callRoom != null || warmUp != null || wind != null || give != null || noWind || note != null) {
        bench.meetDays().keep(day(sheet, bench.meetDays().day(sheet.id()).orElse(null)));
      }
      DaySheet day = bench.dayDesk().sheet(sheet);
      LengthUnit in = options.unit(bench);
      if (file != null) {
        OutFile.write(file, new MeetDayCard(new CardPdf()).render(day, in, size, bench.invented() ? DemoSquad.NOTE : ""), force);
      }
      if (top.json()) {
        Json.print(s.out(), Answer.of(day, file == null ? null : file.toString()));
      } else {
        print(s, day, in);
        if (file != null) {
          s.out().println("Written: " + file);
        }
      }
      return 0;
    }
  }

  /** What was kept with what was said in its place. */
  private MeetDay day(MeetSheet sheet, @Nullable MeetDay kept) {
    if (wind != null && noWind) {
      throw new RefusedException("Give --wind or --no-wind, not both.");
    }
    if (kept == null && starts == null) {
      throw new RefusedException("Nothing is kept of the day of " + sheet.name() + " yet. Say when it starts: --starts 14:30.");
    }
    return new MeetDay(
        sheet.id(),
        starts != null || kept == null ? MeetDay.time(starts == null ? "" : starts) : kept.starts(),
        callRoom != null ? callRoom : kept == null ? MeetDay.USUAL_CALL_ROOM_MIN : kept.callRoom_min(),
        warmUp != null ? warmUp : kept == null ? MeetDay.USUAL_WARM_UP_MIN : kept.warmUp_min(),
        noWind ? null : wind != null ? wind : kept == null ? null : kept.wind(),
        give != null ? give : kept == null ? MeetDay.USUAL_GIVE : kept.windGive(),
        note != null ? note : kept == null ? "" : kept.note());
  }

  private static void print(Surroundings s, DaySheet day, LengthUnit in) {
    MarksText text = new MarksText(s.out(), in);
    text.line("MEET", day.sheet().name() + ", " + day.sheet().date());
    if (day.day() == null) {
      text.wrapped("Times", "Say when it starts: boundwright meet day --meet " + day.sheet().id() + " --starts 14:30.");
    }
    for (DaySheet.Moment m : day.moments()) {
      text.line(m.at().toString(), m.what());
    }
    text.line("Wind", day.windWords().isEmpty() ? "none is expected" : day.windWords());
    for (DaySheet.Mark m : day.marks()) {
      s.out().println();
      text.line(m.place() + ".", m.athlete() + (m.first() == null ? "" : ", about " + m.first()));
      if (m.start_m() == null || m.windStart_m() == null) {
        text.wrapped("", m.rests());
      } else {
        text.line("Start", in.write(m.windStart_m().p50()) + " " + in.writeSpread(m.windStart_m().halfWidth()) + ", " + m.steps() + " steps");
        text.line("For wind", m.move(in));
        text.wrapped("From", m.rests());
      }
    }
    s.out().println();
    text.wrapped("Order", String.join(", ", day.order()));
    text.wrapped("Take care", "Times of warm-up and call room are common practice; the meet's own times go before them.");
  }

  /** What {@code meet day --json} prints; field by field in {@code docs/formats-json.md}. */
  record Answer(
      MeetJson.Head meet,
      @Nullable String starts,
      @Nullable Integer callRoom_min,
      @Nullable Integer warmUp_min,
      @Nullable Double likelyWind_mps,
      @Nullable Double windGive_mps,
      @Nullable String note,
      List<Moment> moments,
      List<Mark> marks,
      List<String> order,
      @Nullable String file) {
    static Answer of(DaySheet d, @Nullable String file) {
      MeetDay day = d.day();
      return new Answer(
          MeetJson.Head.of(d.sheet()),
          day == null ? null : day.starts().toString(),
          day == null ? null : (Integer) day.callRoom_min(),
          day == null ? null : (Integer) day.warmUp_min(),
          day == null ? null : day.wind(),
          day == null ? null : (Double) day.windGive(),
          day == null ? null : day.note(),
          d.moments().stream().map(m -> new Moment(m.at().toString(), m.what(), m.hard())).toList(),
          d.marks().stream().map(Mark::of).toList(),
          d.order(),
          file);
    }
  }

  /** A moment of the day. */
  record Moment(String at, String what, boolean setByTheMeet) {}

  /** An athlete's start mark. */
  record Mark(
      String athlete,
      int place,
      @Nullable String firstAttempt,
      int steps,
      MarksAnswer.@Nullable Spread startMark,
      MarksAnswer.Spread moved,
      MarksAnswer.@Nullable Spread startMarkInWind,
      String from) {
    static Mark of(DaySheet.Mark m) {
      return new Mark(
          m.athlete(),
          m.place(),
          m.first() == null ? null : String.format(Locale.ROOT, "%tR", m.first()),
          m.steps(),
          m.start_m() == null ? null : MarksAnswer.Spread.of(m.start_m()),
          MarksAnswer.Spread.of(m.moved_m()),
          m.windStart_m() == null ? null : MarksAnswer.Spread.of(m.windStart_m()),
          m.rests());
    }
  }
}
