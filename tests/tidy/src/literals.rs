//! The string literals of Rust code, without comments.

/// A string literal and what stands before it on its line.
#[derive(Debug, PartialEq)]
pub struct Literal {
    /// Line, counted from 1.
    pub line: usize,
    /// What it says, escapes as written.
    pub text: String,
    /// The code before it, back to the last line break or semicolon.
    pub before: String,
}

/// All literals of a source, in order.
pub fn literals(source: &str) -> Vec<Literal> {
    let mut found = Vec::new();
    let mut rest = source;
    let mut before = String::new();
    let mut line = 1;
    while let Some(first) = rest.chars().next() {
        let (length, literal) = token(rest);
        let taken = &rest[..length];
        match literal {
            Some(text) => found.push(Literal { line, text: text.to_owned(), before: before.clone() }),
            None if first == '\n' || first == ';' => before.clear(),
            None if !taken.starts_with("//") && !taken.starts_with("/*") => before.push_str(taken),
            None => {}
        }
        line += taken.matches('\n').count();
        rest = &rest[length..];
    }
    found
}

/// The length of what starts the text, and its content when it is a string literal.
fn token(text: &str) -> (usize, Option<&str>) {
    if text.starts_with("//") {
        return (text.find('\n').unwrap_or(text.len()), None);
    }
    if text.starts_with("/*") {
        return (text.find("*/").map_or(text.len(), |end| end + 2), None);
    }
    if let Some(raw) = raw_string(text) {
        return raw;
    }
    if text.starts_with('"') {
        return plain_string(text);
    }
    (character(text), None)
}

fn plain_string(text: &str) -> (usize, Option<&str>) {
    let mut escaped = false;
    for (at, c) in text.char_indices().skip(1) {
        match c {
            _ if escaped => escaped = false,
            '\\' => escaped = true,
            '"' => return (at + 1, Some(&text[1..at])),
            _ => {}
        }
    }
    (text.len(), Some(&text[1..]))
}

fn raw_string(text: &str) -> Option<(usize, Option<&str>)> {
    let hashes = text.strip_prefix('r')?.chars().take_while(|c| *c == '#').count();
    let start = 1 + hashes + 1;
    if text.as_bytes().get(start - 1) != Some(&b'"') {
        return None;
    }
    let close = format!("\"{}", "#".repeat(hashes));
    let length = text[start..].find(&close)?;
    Some((start + length + close.len(), Some(&text[start..start + length])))
}

/// The length of a character literal, or of one character of anything else.
fn character(text: &str) -> usize {
    let first = text.chars().next().expect("the text is not empty");
    if let Some(escape) = text.strip_prefix("'\\") {
        return escape.char_indices().skip(1).find(|(_, c)| *c == '\'').map_or(1, |(at, _)| at + 3);
    }
    let mut ahead = text.char_indices().skip(2);
    match ahead.next() {
        Some((at, '\'')) if first == '\'' => at + 1,
        _ => first.len_utf8(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(source: &str, expected: &[&str]) {
        let found: Vec<String> = literals(source).into_iter().map(|literal| literal.text).collect();
        assert_eq!(found, expected, "{source}");
    }

    #[test]
    fn literals_are_told_from_comments_and_characters() {
        check(r#"a("one"); // "two""#, &["one"]);
        check("/* \"no\" */ \"yes\"", &["yes"]);
        check(r##"r#"raw "inside""# "after""##, &[r#"raw "inside""#, "after"]);
        check(r#"'"' "x" '\'' "y" 'a str"#, &["x", "y"]);
        check(r#""with \" inside""#, &[r#"with \" inside"#]);
    }

    #[test]
    fn a_literal_knows_its_line_and_what_stands_before() {
        let found = literals("let a = 1;\nlet b = x.expect(\"held\");");
        assert_eq!((found[0].line, found[0].before.as_str()), (2, "let b = x.expect("));
    }
}
