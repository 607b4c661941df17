package boundwright.clip.bare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.clip.desk.FilmFolder;
import boundwright.clip.film.Film;
import boundwright.quantity.RefusedException;
import java.io.ByteArrayInputStream;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What a stored film still says, as the system's own {@code ffprobe} reads it and as its bytes stand, of films that {@code ffmpeg} made and gave
 * places, devices and names; both are programs apart. Pictures and sound must be the same, by that program's check sum of every packet.
 * Standing: read, from those programs' output at the time of the test.
 */
@SuppressWarnings("NullAway.Init") // JUnit fills the folder in
class BareFilmTest {
  /** Invented; the place is in the sea. */
  private static final List<String> SECRETS = List.of("+12.3456-045.6789", "Wendelphone", "Model W7", "Ada Fenn", "back field at noon", "WQX");

  @TempDir Path folder;

  private Path keep(Path film) throws IOException {
    FilmFolder store = new FilmFolder(folder.resolve("store"));
    Path arrived = store.receive(new ByteArrayInputStream(Files.readAllBytes(film)), "rep.mp4", (bytes, piece) -> {});
    store.keep(arrived, 1, film.getFileName().toString());
    return folder.resolve("store").resolve("1").resolve("film." + film.getFileName().toString().replaceAll(".*\\.", ""));
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(delimiter = '|', value = {
      "mp4                        | a.mp4  | -c:v libx264 -c:a aac",
      "mp4, index in front        | b.mp4  | -c:v libx264 -c:a aac -movflags +faststart",
      "mp4 with keys, slow motion | c.mp4  | -c:v libx264 -c:a aac -metadata com.android.capture.fps=240 -metadata com.apple.quicktime.location.ISO6709=+12.3456-045.6789/ -movflags use_metadata_tags",
      "mov with keys              | d.mov  | -c:v libx264 -c:a aac -metadata com.apple.quicktime.make=Wendelphone -movflags use_metadata_tags",
      "3gp                        | e.3gp  | -c:v mpeg4 -an",
      "matroska                   | f.mkv  | -c:v libx264 -c:a aac",
      "webm                       | g.webm | -c:v libvpx -deadline realtime -cpu-used 8 -c:a libopus",
      "avi                        | h.avi  | -c:v mpeg4 -c:a mp3",
      "mp4 in fragments           | i.mp4  | -c:v libx264 -c:a aac -movflags frag_keyframe+empty_moov",
  })
  void whatIsStoredSaysNothingOfPlaceDeviceAndNameAndShowsTheSamePictures(String kind, String name, String coding) throws Exception {
    Path film = film(name, coding);
    String told = run("ffprobe", "-v", "error", "-show_format", "-show_streams", film.toString());
    assertThat(SECRETS.stream().filter(told::contains)).as("the film must say something beforehand: " + told).isNotEmpty();
    String before = packets(film);
    long length = Files.size(film);

    Path kept = keep(film);
    assertThat(Files.size(kept)).isEqualTo(length);
    assertThat(packets(kept)).isEqualTo(before);
    String after = run("ffprobe", "-v", "error", "-show_format", "-show_streams", kept.toString());
    String bytes = new String(Files.readAllBytes(kept), StandardCharsets.ISO_8859_1);
    for (String secret : SECRETS) {
      assertThat(after).doesNotContain(secret);
      assertThat(bytes).as("bytes of the film").doesNotContain(secret);
    }
    try (Film opened = Film.open(kept)) {
      assertThat(String.valueOf(opened.facts().captureFps())).isEqualTo(kind.contains("slow") ? "240.0" : "NaN");
    }
  }

  /** Drones write the place of each second as subtitles; other cameras as a track of data. */
  @Test
  void aTrackThatIsNeitherPictureNorSoundGoesWithItsSamples() throws Exception {
    Path words = folder.resolve("places.srt");
    Files.writeString(words, "1\n00:00:00,000 --> 00:00:00,500\n+12.3456-045.6789\n\n2\n00:00:00,500 --> 00:00:01,000\nWendelphone at 3 m\n");
    Path film = folder.resolve("track.mp4");
    Path bare = film("bare.mp4", "-c:v libx264 -c:a aac");
    run("ffmpeg", "-v", "error", "-y", "-i", bare.toString(), "-i", words.toString(), "-map", "0", "-map", "1", "-map_metadata", "-1", "-c", "copy", "-c:s", "mov_text", film.toString());
    assertThat(new String(Files.readAllBytes(film), StandardCharsets.ISO_8859_1)).contains("+12.3456-045.6789", "Wendelphone");
    String before = packets(film);
    Path kept = keep(film);
    assertThat(packets(kept)).isEqualTo(before);
    assertThat(new String(Files.readAllBytes(kept), StandardCharsets.ISO_8859_1)).doesNotContain("+12.3456-045.6789", "Wendelphone");
    assertThat(run("ffprobe", "-v", "error", "-show_entries", "stream=codec_type", "-of", "csv", kept.toString())).doesNotContain("subtitle");
  }

  @Test
  void aKindOfFilmThatCannotBeMadeBareIsRefusedInWordsAndNothingIsKept() throws Exception {
    Path film = film("m.ts", "-c:v libx264 -c:a aac");
    assertThatThrownBy(() -> keep(film)).isInstanceOf(RefusedException.class).hasMessageContaining("transport stream").hasMessageContaining("Save it as MP4");
    try (var left = Files.list(folder.resolve("store"))) {
      assertThat(left).isEmpty();
    }
  }

  /** Whatever bytes arrive: an answer in words or a film of the same length, and an end. */
  @Test
  void damagedFilmsAreAnsweredInWords() throws Exception {
    long seed = 20261129;
    Random random = new Random(seed);
    for (String name : List.of("a.mp4", "d.mov", "f.mkv", "h.avi")) {
      byte[] whole = Files.readAllBytes(film(name, name.equals("h.avi") ? "-c:v mpeg4 -an" : "-c:v libx264 -an"));
      for (int i = 0; i < 150; i++) {
        byte[] bad = i % 3 == 0 ? java.util.Arrays.copyOf(whole, 1 + random.nextInt(whole.length)) : whole.clone();
        for (int k = i % 4; k > 0; k--) {
          bad[random.nextInt(Math.min(bad.length, i % 2 == 0 ? 400 : bad.length))] = (byte) random.nextInt(256);
        }
        Path film = folder.resolve("bad");
        Files.write(film, bad);
        try {
          BareFilm.strip(film, "bad.mp4");
          assertThat(Files.size(film)).as("seed %d, %s, %d", seed, name, i).isEqualTo(bad.length);
        } catch (RefusedException e) {
          assertThat(e).as("seed %d, %s, %d", seed, name, i).hasMessageContaining("bad.mp4");
        }
      }
    }
  }

  private Path film(String name, String coding) throws IOException, InterruptedException {
    for (String tool : List.of("ffmpeg", "ffprobe")) {
      Assumptions.assumeTrue(isHere(tool), "the system's " + tool + " is missing, so stored films are not looked at with it; install the package ffmpeg");
    }
    Path file = folder.resolve(name);
    List<String> command =
        new ArrayList<>(
            List.of(
                "ffmpeg", "-v", "error", "-y", "-f", "lavfi", "-i", "testsrc2=size=176x144:rate=30", "-f", "lavfi", "-i", "sine=440", "-t", "1", "-pix_fmt", "yuv420p",
                "-metadata", "location=+12.3456-045.6789/", "-metadata", "make=Wendelphone", "-metadata", "model=Model W7", "-metadata", "artist=Ada Fenn", "-metadata",
                "title=back field at noon", "-metadata", "comment=+12.3456-045.6789", "-metadata:s:v:0", "handler_name=WQX", "-metadata:s:v:0", "title=WQX"));
    command.addAll(List.of(coding.split(" ")));
    command.add(file.toString());
    run(command.toArray(new String[0]));
    return file;
  }

  private static String packets(Path film) throws IOException, InterruptedException {
    return run("ffmpeg", "-v", "error", "-i", film.toString(), "-map", "0:v", "-map", "0:a?", "-c", "copy", "-f", "framemd5", "-")
        .lines().filter(l -> !l.startsWith("#")).reduce("", (a, b) -> a + b + "\n");
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
