package boundwright.account;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.quantity.RefusedException;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.List;
import org.bouncycastle.crypto.generators.Argon2BytesGenerator;
import org.bouncycastle.crypto.params.Argon2Parameters;
import org.junit.jupiter.api.Test;

/** Slow hashes, read by another library than the one that made them. */
class PasswordsTest {
  private static final String PASSWORD = "four bounds then sand ü";

  /** Argon2id of RFC 9106 (published), as Bouncy Castle computes it from the salt and the settings that stand in the hash. */
  @Test
  void aHashIsArgon2idWithTheSettingsThatStandInIt() {
    String hash = Passwords.hash(PASSWORD, "mara");
    String[] part = hash.split("\\$");
    assertThat(List.of(part[1], part[2], part[3])).containsExactly("argon2id", "v=19", "m=19456,t=2,p=1");
    byte[] salt = Base64.getDecoder().decode(part[4]);
    assertThat(salt).hasSize(16);
    Argon2BytesGenerator other = new Argon2BytesGenerator();
    other.init(
        new Argon2Parameters.Builder(Argon2Parameters.ARGON2_id)
            .withVersion(Argon2Parameters.ARGON2_VERSION_13).withMemoryAsKB(19_456).withIterations(2).withParallelism(1).withSalt(salt).build());
    byte[] computed = new byte[32];
    other.generateBytes(PASSWORD.getBytes(StandardCharsets.UTF_8), computed);
    assertThat(Base64.getEncoder().withoutPadding().encodeToString(computed)).isEqualTo(part[5]);
  }

  @Test
  void onlyTheSamePasswordFits() {
    String hash = Passwords.hash(PASSWORD, "mara");
    assertThat(Passwords.matches(PASSWORD, hash)).isTrue();
    assertThat(Passwords.matches(PASSWORD + " ", hash)).isFalse();
    assertThat(Passwords.matches("", hash)).isFalse();
    assertThat(Passwords.hash(PASSWORD, "mara")).as("a salt of its own each time").isNotEqualTo(hash);
  }

  @Test
  void whatEverybodyWouldTryIsRefusedInWords() {
    for (String bad : List.of("", "short", "elevenchars", "password1234!", "Qwertzuiopas", "aaaaaaaaaaaaaaa", "mara's bounding", "x".repeat(201))) {
      assertThatThrownBy(() -> Passwords.hash(bad, "mara")).as(bad).isInstanceOf(RefusedException.class).hasMessageContaining("Nothing was changed");
    }
  }
}
