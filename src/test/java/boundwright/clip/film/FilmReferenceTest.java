package boundwright.clip.film;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Times of every frame against the system's own {@code ffprobe}, a program apart with its own build of the libraries, for
 * films its companion {@code ffmpeg} made. Standing: read, from that program's output at the time of the test.
 */
final class FilmReferenceTest {
  private static final String UNEVEN = "setpts=N*1001+mod(N*N\\,7)*90+gt(N\\,9)*8000";

  @TempDir Path folder;

  @BeforeAll
  static void toolsAreHere() {
    for (String tool : List.of("ffmpeg", "ffprobe")) {
      Assumptions.assumeTrue(isHere(tool), "the system's " + tool + " is missing, so times are not compared with it; install the package ffmpeg");
    }
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(delimiter = '|', value = {
      "h264 with B-frames          | a.mp4  | 30  | -c:v libx264 -bf 3 -preset veryfast",
      "hevc with B-frames          | b.mp4  | 30  | -c:v libx265 -preset ultrafast -x265-params log-level=none:bframes=3 -tag:v hvc1",
      "hevc, ten bits              | c.mp4  | 60  | -c:v libx265 -preset ultrafast -x265-params log-level=none -pix_fmt yuv420p10le",
      "uneven                      | d.mp4  | 30  | -vf settb=1/90000,UNEVEN -vsync passthrough -enc_time_base 1/90000 -c:v libx264 -preset ultrafast -video_track_timescale 90000",
      "60 frames per second        | e.mp4  | 60  | -c:v libx264 -preset veryfast",
      "120 frames per second       | f.mp4  | 120 | -c:v libx264 -preset veryfast",
      "240 frames per second, mov  | g.mov  | 240 | -c:v libx264 -preset veryfast",
      "odd time base               | h.mp4  | 30000/1001 | -c:v libx264 -preset veryfast -video_track_timescale 8694000",
      "mpeg4                       | i.mp4  | 25  | -c:v mpeg4 -bf 2",
      "mkv with vp9                | j.mkv  | 30  | -c:v libvpx-vp9 -deadline realtime -cpu-used 8",
      "webm with vp9               | k.webm | 50  | -c:v libvpx-vp9 -deadline realtime -cpu-used 8",
      "avi                         | l.avi  | 25  | -c:v mpeg4",
      "transport stream            | m.ts   | 25  | -c:v libx264 -bf 2 -preset veryfast",
      "late start                  | n.mp4  | 30  | -output_ts_offset 1.37 -c:v libx264 -preset veryfast",
      "full range, 4:4:4           | o.mp4  | 30  | -c:v libx264 -preset veryfast -pix_fmt yuvj444p",
  })
  void timesAreThoseOfTheReference(String kind, String name, String rate, String coding) throws Exception {
    Path file = folder.resolve(name);
    make(file, rate, coding);
    compare(file);
  }

  @ParameterizedTest(name = "cut at {0} s without coding again")
  @CsvSource({"0.5", "0.77"})
  void editListIsKept(String from) throws Exception {
    Path whole = folder.resolve("whole.mp4");
    make(whole, "30", "-c:v libx264 -bf 2 -g 10 -preset veryfast");
    Path cut = folder.resolve("cut.mp4");
    run("ffmpeg", "-v", "error", "-y", "-ss", from, "-i", whole.toString(), "-c", "copy", cut.toString());
    compare(cut);
  }

  @ParameterizedTest(name = "turned by {0}")
  @CsvSource({"90", "180", "270"})
  void turnedFilm(String turned) throws Exception {
    Path flat = folder.resolve("flat.mp4");
    make(flat, "30", "-c:v libx264 -preset veryfast");
    Path file = folder.resolve("turned.mov");
    run("ffmpeg", "-v", "error", "-y", "-i", flat.toString(), "-c", "copy", "-metadata:s:v:0", "rotate=" + turned, file.toString());
    compare(file);
    FilmFacts facts = Film.times(file).facts();
    assertThat(facts.turnedDeg()).as("this ffmpeg's tag turns anticlockwise or clockwise").isIn(Integer.parseInt(turned), 360 - Integer.parseInt(turned));
    assertThat(facts.width()).isEqualTo(turned.equals("180") ? 160 : 96);
  }

  private static void compare(Path file) throws IOException, InterruptedException {
    List<Long> reference = new ArrayList<>();
    for (String line : run("ffprobe", "-v", "error", "-select_streams", "v", "-show_entries", "frame=best_effort_timestamp", "-of",
        "csv=p=0", file.toString()).split("\\R")) {
      if (!line.isBlank()) {
        reference.add(Long.parseLong(line.replace(",", "").strip()));
      }
    }
    assertThat(reference).hasSizeGreaterThan(10);
    FilmTimes times = Film.times(file);
    assertThat(times.pts()).containsExactly(reference.toArray(new Long[0]));
    assertThat(times.brokenOff()).isFalse();
    List<Long> read = new ArrayList<>();
    try (Film film = Film.open(file)) {
      for (Frame f = film.next(); f != null; f = film.next()) {
        read.add(f.pts());
        assertThat(f.time_s()).isEqualTo(times.seconds(f.index()));
      }
    }
    assertThat(read).isEqualTo(reference);
  }

  private static void make(Path file, String rate, String coding) throws IOException, InterruptedException {
    List<String> command = new ArrayList<>(List.of("ffmpeg", "-v", "error", "-y", "-f", "lavfi", "-i", "testsrc2=size=160x96:rate=" + rate,
        "-frames:v", "40", "-pix_fmt", "yuv420p"));
    command.addAll(List.of(coding.replace("UNEVEN", UNEVEN).split(" ")));
    command.add(file.toString());
    run(command.toArray(new String[0]));
  }

  private static boolean isHere(String tool) {
    for (String dir : System.getenv().getOrDefault("PATH", "").split(File.pathSeparator)) {
      if (!dir.isEmpty() && Files.isExecutable(Path.of(dir, tool))) {
        return true;
      }
    }
    return false;
  }

  private static String run(String... command) throws IOException, InterruptedException {
    Process process = new ProcessBuilder(command).redirectErrorStream(true).redirectInput(ProcessBuilder.Redirect.PIPE).start();
    process.getOutputStream().close();
    String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor(60, TimeUnit.SECONDS)).as("%s ended", command[0]).isTrue();
    assertThat(process.exitValue()).as("%s: %s", command[0], out).isZero();
    return out;
  }
}
