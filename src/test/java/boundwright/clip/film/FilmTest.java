package boundwright.clip.film;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boundwright.clip.truth.Mp4Writer;
import boundwright.quantity.RefusedException;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Films written here are read back; what went in is the reference. */
final class FilmTest {
  private static final int W = 320;
  private static final int H = 192;
  /** Clockwise from the top left of the stored picture. */
  private static final List<Color> CORNERS = List.of(Color.RED, Color.GREEN, Color.BLUE, Color.WHITE);

  @TempDir Path folder;

  @Test
  void unevenTimesComeBackAsWritten() {
    long[] ticks = {0, 3003, 6001, 9010, 21_000, 21_750, 24_003, 90_000, 90_001, 93_000};
    Path file = write("uneven.mp4", 90_000, 0, ticks);
    List<Long> pts = new ArrayList<>();
    try (Film film = Film.open(file)) {
      for (Frame f = film.next(); f != null; f = film.next()) {
        assertThat(f.index()).isEqualTo(pts.size());
        assertThat(f.time_s()).isEqualTo(f.pts() / 90_000.0, within(1e-12));
        pts.add(f.pts());
      }
      assertThat(film.next()).isNull();
      assertThat(film.brokenOff()).isFalse();
      assertThat(film.facts()).isEqualTo(new FilmFacts("h264", W, H, 0, 1, 90_000, 10, 93_000 / 90_000.0, Double.NaN));
    }
    assertThat(pts).containsExactlyElementsOf(Arrays.stream(ticks).boxed().toList());
    assertThat(Film.times(file).pts()).isEqualTo(ticks);
    assertThat(Film.times(file).seconds(4)).isEqualTo(21_000 / 90_000.0);
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 90, 180, 270})
  void pictureStandsUpright(int turned) {
    try (Film film = Film.open(write("turned.mp4", 30, turned, new long[] {0, 1, 2}))) {
      Picture p = requireNonNull(film.next()).picture();
      boolean tall = turned % 180 != 0;
      assertThat(List.of(p.width(), p.height())).isEqualTo(tall ? List.of(H, W) : List.of(W, H));
      assertThat(List.of(film.facts().width(), film.facts().height(), film.facts().turnedDeg()))
          .isEqualTo(List.of(p.width(), p.height(), turned));
      int[][] spots = {{20, 20}, {p.width() - 20, 20}, {p.width() - 20, p.height() - 20}, {20, p.height() - 20}};
      for (int i = 0; i < 4; i++) {
        // turned a quarter clockwise, what was bottom left is top left
        Color wanted = CORNERS.get(Math.floorMod(i - turned / 90, 4));
        int at = 3 * (spots[i][1] * p.width() + spots[i][0]);
        int[] found = {p.rgb()[at] & 255, p.rgb()[at + 1] & 255, p.rgb()[at + 2] & 255};
        int[] colour = {wanted.getRed(), wanted.getGreen(), wanted.getBlue()};
        for (int c = 0; c < 3; c++) {
          assertThat(found[c]).as("corner %d, colour %d", i, c).isCloseTo(colour[c], within(25));
        }
      }
    }
  }

  @Test
  void pictureGoesIntoTheCallersBuffer() {
    Path file = write("buffers.mp4", 30, 0, new long[] {0, 1, 2});
    try (Film film = Film.open(file); Film again = Film.open(file)) {
      byte[] first = film.buffer();
      byte[] second = film.buffer();
      assertThat(requireNonNull(film.next(first)).picture().rgb()).isSameAs(first).isEqualTo(requireNonNull(again.next()).picture().rgb());
      assertThat(requireNonNull(film.next(second)).picture().rgb())
          .isSameAs(second).isNotEqualTo(first).isEqualTo(requireNonNull(again.next()).picture().rgb());
      assertThatThrownBy(() -> film.next(new byte[3])).isInstanceOf(IllegalArgumentException.class).hasMessageContaining("3");
    }
  }

  @Test
  void mirroredPictureIsMirroredBack() {
    // selfie cameras: a step to the right is shown to the left
    Turn mirror = Turn.of(new int[] {-65_536, 0, 0, 0, 65_536, 0, 0, 0, 1 << 30});
    byte[] shown = new byte[6];
    mirror.apply(new byte[] {1, 2, 3, 4, 5, 6}, 2, 1, shown);
    assertThat(shown).containsExactly(4, 5, 6, 1, 2, 3);
    Turn quarter = Turn.of(new int[] {0, 65_536, 0, 65_536, 0, 0, 0, 0, 1 << 30});
    byte[] turned = new byte[12];
    quarter.apply(new byte[] {1, 1, 1, 2, 2, 2, 3, 3, 3, 4, 4, 4}, 2, 2, turned);
    assertThat(turned).containsExactly(1, 1, 1, 3, 3, 3, 2, 2, 2, 4, 4, 4);
    assertThatThrownBy(() -> Turn.of(new int[] {46_341, 46_341, 0, -46_341, 46_341, 0, 0, 0, 1 << 30}))
        .isInstanceOf(RefusedException.class).hasMessageContaining("45 degrees");
  }

  @Test
  void ratePhoneFilmedAtIsRead() {
    Path file = folder.resolve("slow.mp4");
    try (Mp4Writer out = Mp4Writer.open(file, W, H, 30, 0, "240.0")) {
      out.write(image(0), 0);
    }
    try (Film film = Film.open(file)) {
      assertThat(film.facts().captureFps()).isEqualTo(240);
    }
  }

  @Test
  void cutFilmGivesWhatIsLeftAndSaysSo() throws IOException {
    long[] ticks = new long[60];
    Arrays.setAll(ticks, i -> i);
    byte[] whole = Files.readAllBytes(write("whole.mp4", 30, 0, ticks));
    // index to the front, as in a film saved for streaming, then the second half is lost
    byte[] front = indexFirst(whole);
    Path all = Files.write(folder.resolve("front.mp4"), front);
    assertThat(Film.times(all).pts()).isEqualTo(ticks);
    assertThat(Film.times(all).brokenOff()).isFalse();
    Path half = Files.write(folder.resolve("half.mp4"), Arrays.copyOf(front, front.length * 6 / 10));
    FilmTimes left = Film.times(half);
    assertThat(left.brokenOff()).isTrue();
    assertThat(left.pts().length).isBetween(15, 50);
    assertThat(left.pts()).isEqualTo(Arrays.copyOf(ticks, left.pts().length));
    try (Film film = Film.open(half)) {
      int n = 0;
      while (film.next() != null) {
        n++;
      }
      assertThat(n).isEqualTo(left.pts().length);
      assertThat(film.brokenOff()).isTrue();
    }
  }

  @Test
  void refusesWhatIsNoFilm() throws IOException {
    refused(folder.resolve("nowhere.mp4"), "There is no film \"nowhere.mp4\"", "Check the name");
    refused(folder, "not a file but a folder", "Name the film inside it");
    refused(Files.createFile(folder.resolve("empty.mp4")), "0 bytes", "Copy the film from the phone again");
    refused(Files.writeString(folder.resolve("text.mp4"), "This is a list of reps.\n".repeat(200)), "is not a film", "phone's gallery");
    refused(Files.writeString(folder.resolve("list.mp4"), "#EXTM3U\n#EXTINF:5,\nfile:///other.mp4\n"), "is not a film");
  }

  @Test
  void refusesFilmWithoutIndex() throws IOException {
    byte[] whole = Files.readAllBytes(write("whole.mp4", 30, 0, new long[] {0, 1, 2, 3, 4, 5, 6, 7}));
    Path cut = Files.write(folder.resolve("cut.mp4"), Arrays.copyOf(whole, whole.length / 2));
    refused(cut, "breaks off before its index", "copy the film again");
  }

  @Test
  void refusesFilmOfNoiseAfterItsIndex() throws IOException {
    byte[] front = indexFirst(Files.readAllBytes(write("whole.mp4", 30, 0, new long[] {0, 1, 2, 3})));
    Path file = Files.write(folder.resolve("no-data.mp4"), Arrays.copyOf(front, boxEnd(front, "moov") + 12));
    assertThatThrownBy(() -> Film.times(file)).isInstanceOf(RefusedException.class).hasMessageContaining("Copy the film");
  }

  @Test
  void refusesSoundOnly() {
    refused(Sound.write(folder.resolve("sound.mp4")), "holds no moving picture", "Take the film itself");
  }

  @Test
  void refusesTooLong() {
    refused(write("long.mp4", 1, 0, new long[] {0, 30, 61}), "62.0 s long", "the limit is 60 s", "Cut it");
    assertThat(Film.times(write("just.mp4", 10, 0, new long[] {0, 300, 599})).pts()).hasSize(3);
  }

  @Test
  void refusesEightK() {
    Path file = folder.resolve("8k.mp4");
    try (Mp4Writer out = Mp4Writer.openLarge(file, 7680, 4320, 30)) {
      out.write(new BufferedImage(7680, 4320, BufferedImage.TYPE_BYTE_GRAY), 0);
    }
    refused(file, "7680 px", "the limit is 4096 px", "Film in 4K or below");
  }

  @Test
  void damagedFilmIsReadAsFarAsItGoesOrRefused() throws IOException {
    long[] ticks = new long[24];
    Arrays.setAll(ticks, i -> i);
    byte[] whole = Files.readAllBytes(write("whole.mp4", 30, 90, ticks));
    Random random = new Random(20_240_611);
    Path file = folder.resolve("damaged.mp4");
    int read = 0;
    int noticed = 0;
    for (int round = 0; round < 120; round++) {
      byte[] damaged = whole.clone();
      for (int i = 0; i <= random.nextInt(30); i++) {
        damaged[random.nextInt(damaged.length)] = (byte) random.nextInt(256);
      }
      Files.write(file, damaged);
      try (Film film = Film.open(file)) {
        while (film.next() != null) {
          read++;
        }
        noticed += film.brokenOff() ? 1 : 0;
      } catch (RefusedException e) {
        assertThat(e).hasMessageMatching("(?s).+\\. .+\\.|.+: .+\\.");
        noticed++;
      }
    }
    assertThat(read).isPositive();
    assertThat(noticed).isPositive();
  }

  @Test
  void nameMayHoldAnything() {
    assertThat(Film.times(write("a: b %d? 100%.mp4", 30, 0, new long[] {0, 1})).pts()).containsExactly(0, 1);
  }

  @Test
  void frameAfterClosingIsRefused() {
    Film film = Film.open(write("shut.mp4", 30, 0, new long[] {0, 1}));
    film.close();
    film.close();
    assertThatThrownBy(film::next).isInstanceOf(IllegalStateException.class);
  }

  @Test
  void clipOfKnownRateHasIt() {
    // read with the system's ffprobe: 138 frames, each 72439 ticks of 1/8694000 s after the one before, 1080 x 1920
    String shared = System.getenv("BOUNDWRIGHT_SHARED");
    Path file = (shared == null ? Path.of("..", "shared") : Path.of(shared)).resolve(Path.of("data", "ball-flight", "ball-flight.mp4"));
    Assumptions.assumeTrue(Files.exists(file), "the ball-flight clip is not beside the project; left out");
    FilmTimes times = Film.times(file);
    FilmFacts facts = times.facts();
    assertThat(List.of(facts.frames(), facts.width(), facts.height(), facts.timeBaseNum(), facts.timeBaseDen()))
        .containsExactly(138, 1080, 1920, 1, 8_694_000);
    assertThat((facts.frames() - 1) / facts.seconds()).isEqualTo(8_694_000.0 / 72_439, within(1e-9));
    assertThat(times.brokenOff()).isFalse();
    try (Film film = Film.open(file)) {
      Picture first = requireNonNull(film.next()).picture();
      assertThat(List.of(first.width(), first.height())).containsExactly(1080, 1920);
    }
  }

  private static void refused(Path file, String... parts) {
    assertThatThrownBy(() -> Film.open(file).close()).isInstanceOf(RefusedException.class).hasMessageContainingAll(parts);
  }

  private Path write(String name, int ticksPerSecond, int turned, long[] ticks) {
    Path file = folder.resolve(name);
    try (Mp4Writer out = Mp4Writer.open(file, W, H, ticksPerSecond, turned)) {
      for (int i = 0; i < ticks.length; i++) {
        out.write(image(i), ticks[i]);
      }
    }
    return file;
  }

  private static BufferedImage image(int n) {
    BufferedImage image = new BufferedImage(W, H, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = image.createGraphics();
    int[][] at = {{0, 0}, {W - 64, 0}, {W - 64, H - 64}, {0, H - 64}};
    for (int i = 0; i < 4; i++) {
      g.setColor(CORNERS.get(i));
      g.fillRect(at[i][0], at[i][1], 64, 64);
    }
    g.setColor(Color.ORANGE);
    g.fillOval(80 + 2 * n % 120, 70 + n % 7, 30, 30);
    g.dispose();
    return image;
  }

  private static int boxEnd(byte[] film, String type) {
    int at = boxStart(film, type);
    return at + ByteBuffer.wrap(film).getInt(at);
  }

  private static int boxStart(byte[] film, String type) {
    int at = 0;
    while (!new String(film, at + 4, 4, StandardCharsets.ISO_8859_1).equals(type)) {
      at += ByteBuffer.wrap(film).getInt(at);
    }
    return at;
  }

  /** Moves the index in front of the pictures, with the places in it (32-bit chunk offsets) moved along. */
  private static byte[] indexFirst(byte[] film) {
    int moov = boxStart(film, "moov");
    int length = boxEnd(film, "moov") - moov;
    int ftyp = boxEnd(film, "ftyp");
    ByteBuffer out = ByteBuffer.allocate(film.length);
    out.put(film, 0, ftyp).put(film, moov, length).put(film, ftyp, moov - ftyp).put(film, moov + length, film.length - moov - length);
    int stco = new String(out.array(), StandardCharsets.ISO_8859_1).indexOf("stco");
    int entries = out.getInt(stco + 8);
    for (int i = 0; i < entries; i++) {
      out.putInt(stco + 12 + 4 * i, out.getInt(stco + 12 + 4 * i) + length);
    }
    return out.array();
  }
}
