package boundwright.picture.film;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boundwright.card.PicturePng;
import boundwright.clip.FoundClip;
import boundwright.clip.body.DeLeva;
import boundwright.clip.film.FilmFacts;
import boundwright.clip.reading.ClipReader;
import boundwright.clip.reading.ClipReading;
import boundwright.clip.reading.ReadContact;
import boundwright.clip.reading.Setup;
import boundwright.clip.truth.Filmed;
import boundwright.clip.truth.Noise;
import boundwright.clip.truth.TrueClip;
import boundwright.footfall.Sequence;
import boundwright.picture.BodyPicture;
import boundwright.quantity.LengthUnit;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Base64;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;

/** The long photograph of made-up reps, held against where the made-up athlete stood (own output), whichever way they ran. */
class LongPhotoTest {
  /** Seed 3 runs to the right of the film's picture, seed 4 to the left. */
  private static final long[] SEEDS = {3, 4};

  private record Film(TrueClip clip, FoundClip found, ClipReading reading, Map<Integer, byte[]> kept) {
    private static final Map<Long, Film> MADE = new HashMap<>();

    static Film of(long seed) {
      return MADE.computeIfAbsent(seed, Film::make);
    }

    private static Film make(long seed) {
      TrueClip clip = TrueClip.of(Sequence.parse("RRL"), 1, 6, 60, Noise.NONE, false, seed);
      int n = clip.found().frames();
      FoundClip found = new FoundClip(new FilmFacts("h264", 1280, 720, 0, 1, 90_000, n, n / 60.0, Double.NaN), 0, clip.found(), n, List.of());
      Setup marks = new Setup(clip.marks(), new Setup.Pole(clip.poleFoot(), clip.poleTop(), clip.pole_m()), List.of(), 1, DeLeva.MALE);
      return new Film(clip, found, ClipReader.read(found, marks, List.of(), Sequence.parse("RRL")), new HashMap<>());
    }

    /** As stored: half as wide as the film. */
    byte[] still(int frame) {
      return kept.computeIfAbsent(
          frame,
          f -> {
            BufferedImage small = new BufferedImage(640, 360, BufferedImage.TYPE_INT_RGB);
            small.createGraphics().drawImage(Filmed.frame(clip, clip.found().time(f), 0), 0, 0, 640, 360, null);
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            try {
              ImageIO.write(small, "jpeg", out);
            } catch (IOException e) {
              throw new UncheckedIOException(e);
            }
            return out.toByteArray();
          });
    }
  }

  @Test
  void theAthleteStandsAtEachContactInMetresAndNowhereElse() throws IOException {
    for (long seed : SEEDS) {
      Film f = Film.of(seed);
      LongPicture p = LongPicture.of(f.reading(), null, LengthUnit.METRES).orElseThrow();
      assertThat(p.turned()).as("seed %d", seed).isEqualTo(!f.clip().camera().toTheRight());
      byte[] jpeg = LongPhoto.jpeg(f.found(), f.reading(), p.from(), p.to(), p.reach(), f::still).orElseThrow();
      BufferedImage image = ImageIO.read(new ByteArrayInputStream(jpeg));
      double perMetre = image.getWidth() / (p.to() - p.from());
      assertThat(image.getHeight() / perMetre).as("a metre is as high as wide").isCloseTo(p.reach().height(), within(0.03));
      List<Double> stood = new ArrayList<>();
      for (ReadContact r : f.reading().contacts()) {
        double at = r.contact().bothFeet() ? r.contact().heel_m().p50() : r.contact().place_m().p50();
        if (at > p.from() + 0.4 && at < p.to() - 0.4) {
          stood.add(at);
          assertThat(shoe(image, (at - p.from()) * perMetre, 0.25 * perMetre, (p.reach().top() - p.reach().ground()) * perMetre))
              .as("seed %d: a yellow shoe where contact at %.2f m was read", seed, at).isTrue();
        }
      }
      assertThat(stood).hasSizeGreaterThanOrEqualTo(3);
      double[] shirts = shirt(image);
      for (double x : shirts) {
        double metres = p.from() + x / perMetre;
        assertThat(stood.stream().mapToDouble(s -> Math.abs(s - metres)).min().orElseThrow()).as("seed %d: nobody between the contacts", seed).isLessThan(1.0);
      }
    }
  }

  /** The painted shoe's yellow: red and green much above blue. */
  private static boolean shoe(BufferedImage image, double x, double aside, double ground) {
    for (int u = (int) Math.max(0, x - aside); u < Math.min(image.getWidth(), x + aside); u++) {
      for (int v = (int) (ground - aside); v < Math.min(image.getHeight(), ground + aside / 2); v++) {
        int c = image.getRGB(u, v);
        if ((c >> 16 & 0xff) > 150 && (c >> 8 & 0xff) > 150 && (c & 0xff) < 130) {
          return true;
        }
      }
    }
    return false;
  }

  /** Columns that show the painted shirt's blue below the sky. */
  private static double[] shirt(BufferedImage image) {
    List<Double> out = new ArrayList<>();
    for (int u = 0; u < image.getWidth(); u++) {
      int blue = 0;
      for (int v = image.getHeight() / 4; v < image.getHeight(); v++) {
        int c = image.getRGB(u, v);
        blue += (c & 0xff) > 90 && (c >> 16 & 0xff) < 70 && (c >> 8 & 0xff) < 110 ? 1 : 0;
      }
      if (blue > 4) {
        out.add((double) u);
      }
    }
    assertThat(out).as("the shirt is seen at all").isNotEmpty();
    return out.stream().mapToDouble(d -> d).toArray();
  }

  @Test
  void figuresStandUnderTheirFeetAndAreTheReadingsOwn() {
    Film f = Film.of(3);
    LongPicture p = LongPicture.of(f.reading(), null, LengthUnit.METRES).orElseThrow();
    var under = Objects.requireNonNull(p.under());
    int k = 0;
    for (int i = 0; i < f.reading().contacts().size(); i++) {
      ReadContact r = f.reading().contacts().get(i);
      if (f.reading().number(i) > 0) {
        LongPicture.Foot foot = p.feet().get(k);
        assertThat(foot.x()).isCloseTo(under.x(r.contact().place_m().p50()), within(0.02));
        assertThat(under.strip().rows().get(0).prints().get(k).x()).as("foot under foot").isCloseTo(foot.x(), within(0.02));
        assertThat(foot.values().get(1)).isEqualTo(Math.round(r.trunkLeanDeg()) + "°");
        k++;
      }
    }
    assertThat(p.feet()).hasSize(k);
    assertThat(p.svg("x.jpg")).contains("href=\"x.jpg\"").contains("free thigh").doesNotContain("NaN");
  }

  @Test
  void withoutPicturesThereIsNoPhotographAndWithoutMarksNoStrip() {
    Film f = Film.of(3);
    LongPicture p = LongPicture.of(f.reading(), null, LengthUnit.METRES).orElseThrow();
    assertThat(LongPhoto.jpeg(f.found(), f.reading(), p.from(), p.to(), p.reach(), n -> null)).isEmpty();
    ClipReading plain = ClipReader.read(f.found(), Setup.none(), List.of(), null);
    LongPicture bare = LongPicture.of(plain, null, LengthUnit.METRES).orElseThrow();
    assertThat(bare.under()).isNull();
    assertThat(LongPhoto.jpeg(f.found(), plain, bare.from(), bare.to(), bare.reach(), f::still)).isPresent();
  }

  @Test
  void aFrameIsSavedWithItsFiguresInTheSizeAskedAndNothingIsFetched() throws IOException {
    Film f = Film.of(3);
    int frame = f.reading().frameAt(f.reading().begin(f.reading().withNumber(1)));
    FrameSheet sheet = new FrameSheet(BodyPicture.of(f.found(), f.reading(), frame, BodyPicture.Cut.NEAR), "Contact 1 & <right>", List.of("On the ground 0.120 s."));
    String svg = sheet.svg("data:image/jpeg;base64," + Base64.getEncoder().encodeToString(f.still(frame)));
    assertThat(svg).contains("Contact 1 &amp; &lt;right&gt;").doesNotContain("http://127").doesNotContain("/clips/");
    BufferedImage png = ImageIO.read(new ByteArrayInputStream(new PicturePng().render(svg, 480)));
    assertThat(png.getWidth()).isEqualTo(480);
    assertThat(png.getHeight()).isCloseTo((int) sheet.height(), within(2));
    assertThat(png.getRGB(2, png.getHeight() - 2) & 0xffffff).as("the house's paper").isEqualTo(0xfaf6ec);
  }
}
