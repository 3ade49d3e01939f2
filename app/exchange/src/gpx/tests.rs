use super::*;
use place::instant::UtcOffset;
use proptest::prelude::*;

/// Invented; everything that is read, and some that is not.
const WALK: &str = r#"<?xml version="1.0" encoding="UTF-8"?>
<gpx version="1.1" creator="invented" xmlns="http://www.topografix.com/GPX/1/1" xmlns:x="urn:x">
  <metadata><name>not a track</name><time>2026-06-12T19:00:00Z</time></metadata>
  <wpt lat="1" lon="2"><name>left alone</name></wpt>
  <trk>
    <name>Meadow &amp; ditch &#8211; <![CDATA[<one>]]></name>
    <trkseg>
      <trkpt lat="46.302150" lon="7.583940"><ele>560.0</ele><time>2026-06-12T19:30:00Z</time><hdop>1.2</hdop></trkpt>
      <trkpt lon='-180' lat='-90'>
        <time> 2026-06-12T21:31:00.250+02:00 </time>
        <extensions><x:time>nonsense</x:time><trkpt lat="9" lon="9"/></extensions>
      </trkpt>
    </trkseg>
    <trkseg><trkpt lat="46.4" lon="7.6"/></trkseg>
    <trkseg/>
  </trk>
  <trk><trkseg></trkseg></trk>
</gpx>
"#;

fn faults(text: &str) -> Vec<(u64, &'static str)> {
    read(text.as_bytes()).faults.iter().map(|fault| (fault.line, fault.reason.code())).collect()
}

/// A file with one point.
fn one(attributes: &str, inside: &str) -> String {
    format!("<gpx>\n<trk><trkseg>\n<trkpt {attributes}>{inside}</trkpt>\n</trkseg></trk></gpx>")
}

fn points(text: &str) -> Vec<Point> {
    read(text.as_bytes()).tracks.into_iter().flat_map(|track| track.segments).flatten().collect()
}

#[test]
fn tracks_segments_and_points_are_read() {
    let gpx = read(WALK.as_bytes());
    assert_eq!(gpx.faults, []);
    assert_eq!(gpx.tracks.len(), 2);
    assert_eq!(gpx.tracks[0].name.as_deref(), Some("Meadow & ditch – <one>"));
    assert_eq!(gpx.tracks[1], Track { name: None, segments: vec![Vec::new()] });
    let lengths: Vec<usize> = gpx.tracks[0].segments.iter().map(Vec::len).collect();
    assert_eq!(lengths, [2, 1, 0]);
    let [first, second] = gpx.tracks[0].segments[0][..] else { panic!("two points") };
    assert_eq!(first.position, Position::new(46.302_15, 7.583_94, None).expect("a position"));
    assert_eq!((first.elevation, first.dilution), (Metres::new(560.0), Some(1.2)));
    let text = |point: Point| point.at.map(|at| at.text(UtcOffset::default()));
    assert_eq!(text(first).as_deref(), Some("2026-06-12T19:30:00+00:00"));
    assert_eq!(text(second).as_deref(), Some("2026-06-12T19:31:00+00:00"));
    assert_eq!(second.position, Position::new(-90.0, -180.0, None).expect("a position"));
    assert_eq!(gpx.fixes().len(), 2);
}

#[test]
fn a_faulty_point_is_passed_over_and_said() {
    for (attributes, code) in [
        ("lat=\"4.63E1\" lon=\"7\"", "latitude"),
        ("lat=\"90.1\" lon=\"7\"", "latitude"),
        ("lat=\"NaN\" lon=\"7\"", "latitude"),
        ("lat=\"46,3\" lon=\"7\"", "latitude"),
        ("lon=\"7\"", "latitude"),
        ("lat=\"46\"", "longitude"),
        ("lat=\"46\" lon=\"180.1\"", "longitude"),
        ("lat=\"46\" lon=\"inf\"", "longitude"),
        ("lat=\"46\" lon=\"\"", "longitude"),
        ("lat=\"46\" lon=", "longitude"),
    ] {
        let text = one(attributes, "<time>2026-06-12T19:30:00Z</time>");
        assert_eq!((faults(&text), points(&text).len()), (vec![(3, code)], 0), "{attributes}");
    }
    let text = one("lat=\"46\" lon=\"7\"", "\n<time>yesterday</time>\n<ele>high</ele><hdop>-1</hdop>");
    assert_eq!(faults(&text), [(4, "time"), (5, "elevation")]);
    assert_eq!(read(text.as_bytes()).faults[0].reason, Reason::Time("yesterday".to_owned()));
    let [point] = points(&text)[..] else { panic!("one point") };
    assert_eq!((point.at, point.elevation, point.dilution), (None, None, None));
}

#[test]
fn a_broken_file_gives_what_stood_before_and_the_line() {
    let cut = &WALK[..WALK.find("</trkseg>").expect("a segment ends")];
    let gpx = read(cut.as_bytes());
    assert_eq!(gpx.tracks[0].segments[0].len(), 2);
    assert_eq!(faults(cut), [(13, "cut_off")]);
    assert_eq!(faults(&WALK[..WALK.find("lon='-180'").expect("a point")]), [(9, "cut_off")]);
    assert_eq!(faults(&WALK.replace("    </trkseg>\n", "")), [(15, "xml")]);
    assert_eq!(faults("<gpx>\n<trk>\n<name>&#xD800;</name>"), [(3, "xml")]);
    assert_eq!(faults("<gpx>\n<trk></gpx>"), [(2, "xml")]);
    assert_eq!(faults("<gpx></gpx></gpx>"), [(1, "xml")]);
    let latin = b"<?xml version=\"1.0\"?>\n<gpx>\n<trk><name>B\xe4r</name></trk></gpx>";
    assert_eq!(read(&latin[..]).faults, [Fault { line: 3, reason: Reason::Encoding }]);
}

#[test]
fn what_is_no_gpx_is_refused() {
    for text in ["", "\n\n", "<kml></kml>", "<gpx/><gpx/>", "by the barn"] {
        assert_eq!(faults(text).last().map(|fault| fault.1), Some("not_gpx"), "{text}");
    }
    assert_eq!(faults("{\"format\":\"x\"}\n"), [(2, "not_gpx")]);
    assert_eq!(faults("<gpx/>"), []);
}

#[test]
fn older_files_are_read_alike() {
    let text = WALK.replace("1.1", "1.0").replace("GPX/1/1", "GPX/1/0");
    assert_eq!(read(text.as_bytes()), read(WALK.as_bytes()));
    let prefixed = WALK.replace("<trkpt", "<g:trkpt").replace("</trkpt", "</g:trkpt");
    assert_eq!(read(prefixed.as_bytes()), read(WALK.as_bytes()));
    // A mark of the encoding at the beginning, and the line ends of another system.
    let marked = format!("\u{feff}{}", WALK.replace('\n', "\r\n"));
    assert_eq!(read(marked.as_bytes()).tracks[0].segments, read(WALK.as_bytes()).tracks[0].segments);
}

/// A source that gives its bytes in pieces of one length.
struct Pieces<'a> {
    bytes: &'a [u8],
    length: usize,
}

impl std::io::Read for Pieces<'_> {
    fn read(&mut self, buffer: &mut [u8]) -> std::io::Result<usize> {
        let length = self.length.min(buffer.len()).min(self.bytes.len());
        buffer[..length].copy_from_slice(&self.bytes[..length]);
        self.bytes = &self.bytes[length..];
        Ok(length)
    }
}

#[test]
fn a_file_is_read_piece_by_piece() {
    for length in [1, 2, 7, 64, 1000] {
        let pieces = Pieces { bytes: WALK.as_bytes(), length };
        assert_eq!(read(std::io::BufReader::with_capacity(length, pieces)), read(WALK.as_bytes()), "{length}");
    }
}

/// A hundred thousand points, made while they are read, and never all of the text at once.
#[test]
fn huge_files_are_streamed() {
    struct Endless {
        made: usize,
        text: Vec<u8>,
    }
    impl std::io::Read for Endless {
        fn read(&mut self, buffer: &mut [u8]) -> std::io::Result<usize> {
            if self.text.is_empty() {
                self.text = match self.made {
                    0 => b"<gpx><trk><trkseg>\n".to_vec(),
                    1..=100_000 => {
                        b"<trkpt lat=\"46.3\" lon=\"7.5\"><time>2026-06-12T19:30:00Z</time></trkpt>\n".to_vec()
                    }
                    100_001 => b"</trkseg></trk></gpx>".to_vec(),
                    _ => return Ok(0),
                };
                self.made += 1;
            }
            let length = buffer.len().min(self.text.len());
            buffer[..length].copy_from_slice(&self.text[..length]);
            self.text.drain(..length);
            Ok(length)
        }
    }
    let gpx = read(std::io::BufReader::with_capacity(4096, Endless { made: 0, text: Vec::new() }));
    assert_eq!((gpx.fixes().len(), gpx.faults.len()), (100_000, 0));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2_000))]

    #[test]
    fn any_bytes_can_be_read(bytes in prop::collection::vec(any::<u8>(), 0..200)) {
        let gpx = read(&bytes[..]);
        prop_assert!(!gpx.faults.is_empty());
    }

    #[test]
    fn any_wound_can_be_read(at in 0..WALK.len(), length in 0..40_usize, put in prop::collection::vec(any::<u8>(), 0..6),
        piece in "(<|</|&|\\]\\]>|<!|<!--|<\\?|<trkpt|<gpx|<trk>|<trkseg>|</trkpt>|</trkseg>|'|\"|=)?") {
        let mut bytes = WALK.as_bytes().to_vec();
        let end = (at + length).min(bytes.len());
        bytes.splice(at..end, put.into_iter().chain(piece.into_bytes()));
        let gpx = read(&bytes[..]);
        let lines = bytes.iter().filter(|byte| **byte == b'\n').count() as u64 + 1;
        prop_assert!(gpx.faults.iter().all(|fault| (1..=lines).contains(&fault.line)));
        prop_assert!(gpx.faults.windows(2).all(|pair| pair[0].line <= pair[1].line));
    }
}
