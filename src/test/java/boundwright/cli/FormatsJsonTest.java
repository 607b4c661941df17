package boundwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.cli.person.GrowthJson;
import boundwright.cli.person.PersonAnswer;
import boundwright.cli.season.PlanAnswer;
import boundwright.cli.season.SimulationAnswer;
import java.io.IOException;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Every field that a command prints stands in its section of the document, in the document's spelling. */
class FormatsJsonTest {
  static Stream<Arguments> answers() {
    return Stream.of(
        Arguments.of("marks", MarksAnswer.class),
        Arguments.of("count", CountCommand.Answer.class),
        Arguments.of("clip", ClipAnswer.class),
        Arguments.of("log", RepAnswer.class),
        Arguments.of("long-jump", LongJumpAnswers.Answer.class),
        Arguments.of("long-jump", LongJumpAnswers.OneTakeOff.class),
        Arguments.of("take-offs", TakeOffsAnswers.Answer.class),
        Arguments.of("take-offs", TakeOffsAnswers.Entry.class),
        Arguments.of("legs", LegsCommand.Answer.class),
        Arguments.of("aim", AimJson.PointsOf.class),
        Arguments.of("approach", RunUpAnswer.class),
        Arguments.of("meet", MeetJson.Now.class),
        Arguments.of("load", LoadCommand.LoadAnswer.class),
        Arguments.of("ready", ReadyCommand.Answer.class),
        Arguments.of("pain and hold", CareAnswer.class),
        Arguments.of("athlete", PersonAnswer.class),
        Arguments.of("growth", GrowthJson.class),
        Arguments.of("full-run", FullRunJson.Answer.class),
        Arguments.of("full-run", FullRunJson.Entry.class),
        Arguments.of("weather", FullRunJson.Days.class),
        Arguments.of("chance", ChanceCommand.Answer.class),
        Arguments.of("meet day", MeetDayCommand.Answer.class),
        Arguments.of("session order", OrderAnswer.class),
        Arguments.of("season plan", PlanAnswer.Planned.class),
        Arguments.of("season mend", PlanAnswer.Mended.class),
        Arguments.of("season explain", PlanAnswer.Unmet.class),
        Arguments.of("season explain", PlanAnswer.Day.class),
        Arguments.of("season simulate", SimulationAnswer.class),
        Arguments.of("export", ExportCommand.Everything.class),
        Arguments.of("phones", PhonesCommand.PhonesAnswer.class),
        Arguments.of("account", AccountCommand.AccountsAnswer.class),
        Arguments.of("card", CardCommand.Answer.class),
        Arguments.of("report", ReportCommand.Answer.class));
  }

  @ParameterizedTest
  @MethodSource("answers")
  void everyFieldIsDescribed(String section, Class<?> answer) throws IOException {
    String document = Files.readString(Path.of("docs", "formats-json.md"));
    int from = document.indexOf("\n## " + section + "\n");
    assertThat(from).as(section).isPositive();
    String text = document.substring(from, document.indexOf("\n## ", from + 4));
    Set<String> fields = new TreeSet<>();
    collect(answer, fields);
    assertThat(fields).hasSizeGreaterThan(3);
    assertThat(fields)
        .allSatisfy(f -> assertThat(Pattern.compile("`[^`]*\\b" + f + "\\b[^`]*`").matcher(text).find()).as(section + ": " + f).isTrue());
  }

  private static void collect(Type type, Set<String> fields) {
    if (type instanceof ParameterizedType p) {
      for (Type t : p.getActualTypeArguments()) {
        collect(t, fields);
      }
    } else if (type instanceof Class<?> c && c.isRecord()) {
      for (RecordComponent part : c.getRecordComponents()) {
        if (fields.add(part.getName()) || part.getType().isRecord() || part.getGenericType() instanceof ParameterizedType) {
          collect(part.getGenericType(), fields);
        }
      }
    }
  }
}
