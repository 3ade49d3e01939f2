//! What the browser's own description of itself says, as far as it can be believed.

use ports::device::Platform;

/// Marks of a system in the description and its name, the telling ones first.
const SYSTEMS: [(&str, &str); 7] = [
    ("iPhone", "iPhone"),
    ("iPad", "iPad"),
    ("Android", "Android"),
    ("CrOS", "ChromeOS"),
    ("Windows", "Windows"),
    ("Macintosh", "macOS"),
    ("Linux", "Linux"),
];

/// Marks of a browser in the description and its name. Most claim to be others too: the first that is
/// found is the right one.
const BROWSERS: [(&str, &str); 9] = [
    ("EdgA/", "Edge"),
    ("Edg/", "Edge"),
    ("SamsungBrowser/", "Samsung Internet"),
    ("FxiOS/", "Firefox"),
    ("Firefox/", "Firefox"),
    ("CriOS/", "Chrome"),
    ("OPR/", "Opera"),
    ("Chrome/", "Chrome"),
    ("Version/", "Safari"),
];

/// What the page is told of its device: the description, and how many fingers the screen takes.
pub struct Agent<'a> {
    /// `navigator.userAgent`.
    pub says: &'a str,
    /// `navigator.maxTouchPoints`.
    pub fingers: i32,
}

impl Agent<'_> {
    /// The platform. An iPad says that it is a Mac; only its screen takes several fingers.
    pub fn platform(&self) -> Platform {
        match self.system() {
            "iPhone" | "iPad" => Platform::Ios,
            "Android" => Platform::Android,
            _ => Platform::Other,
        }
    }

    /// System, browser and its version ("Android, Chrome 156").
    pub fn describe(&self) -> String {
        let found = BROWSERS.iter().find_map(|(mark, name)| Some((self.says.split_once(mark)?.1, name)));
        let Some((after, browser)) = found else { return self.system().to_owned() };
        let version: String = after.chars().take_while(char::is_ascii_digit).collect();
        format!("{}, {browser} {version}", self.system())
    }

    fn system(&self) -> &'static str {
        let found = SYSTEMS.iter().find(|(mark, _)| self.says.contains(mark));
        match found.map(|(_, name)| *name) {
            Some("macOS") if self.fingers > 1 => "iPad",
            found => found.unwrap_or("unknown system"),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(says: &str, fingers: i32, platform: Platform, describe: &str) {
        let agent = Agent { says, fingers };
        assert_eq!((agent.platform(), agent.describe().as_str()), (platform, describe));
    }

    // Shapes of descriptions as browsers send them, from memory.
    #[test]
    fn an_android_phone_and_its_browser_are_recognised() {
        let says = "Mozilla/5.0 (Linux; Android 10; K) AppleWebKit/537.36 (KHTML, like Gecko) \
                    Chrome/156.0.0.0 Mobile Safari/537.36";
        check(says, 5, Platform::Android, "Android, Chrome 156");
        let says = "Mozilla/5.0 (Android 14; Mobile; rv:145.0) Gecko/145.0 Firefox/145.0";
        check(says, 5, Platform::Android, "Android, Firefox 145");
    }

    #[test]
    fn an_ipad_that_says_it_is_a_mac_is_told_by_its_screen() {
        let says = "Mozilla/5.0 (Macintosh; Intel Mac OS X 10_15_7) AppleWebKit/605.1.15 \
                    (KHTML, like Gecko) Version/17.4 Safari/605.1.15";
        check(says, 5, Platform::Ios, "iPad, Safari 17");
        check(says, 0, Platform::Other, "macOS, Safari 17");
    }

    #[test]
    fn an_iphone_is_one_whatever_browser_runs_on_it() {
        let says = "Mozilla/5.0 (iPhone; CPU iPhone OS 17_4 like Mac OS X) AppleWebKit/605.1.15 \
                    (KHTML, like Gecko) CriOS/130.0.1 Mobile/15E148 Safari/604.1";
        check(says, 5, Platform::Ios, "iPhone, Chrome 130");
    }

    #[test]
    fn a_desk_is_another_platform_and_nothing_known_is_said_so() {
        let says = "Mozilla/5.0 (X11; Linux x86_64) AppleWebKit/537.36 (KHTML, like Gecko) \
                    Chrome/156.0.0.0 Safari/537.36 Edg/156.0.0.0";
        check(says, 0, Platform::Other, "Linux, Edge 156");
        check("Something/1.0", 0, Platform::Other, "unknown system");
    }
}
