package boundwright.web.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

/** Each asset is read when it is asked for, so that one the build left out would be noticed late: here. */
class AssetsTest {
  @Test
  void theBuildLeftNoneOut() {
    Assets assets = new Assets();
    assertThat(assets.names()).hasSizeGreaterThan(30).allSatisfy(name -> assertThat(assets.href(name)).matches("/assets/\\Q" + name + "\\E\\?v=[0-9a-f]{16}"));
    assertThatThrownBy(() -> assets.href("none.css")).isInstanceOf(IllegalArgumentException.class);
  }
}
