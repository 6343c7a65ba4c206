//! Words as the ASCII that every reader of the format shows alike.

/// Replaces signs by their control codes or nearest ASCII; letters lose their accents, what remains is a question mark.
pub fn ascii(words: &str) -> String {
    let mut out = String::with_capacity(words.len());
    for c in words.chars() {
        match c {
            'Ø' | 'ø' | '⌀' => out.push_str("%%c"),
            '°' => out.push_str("%%d"),
            '±' => out.push_str("%%p"),
            '%' => out.push_str("%%%"),
            '\u{2044}' => out.push('/'),
            '\u{2033}' | '“' | '”' => out.push('"'),
            '\u{2032}' | '‘' | '’' => out.push('\''),
            '×' => out.push('x'),
            '–' | '—' | '\u{2212}' => out.push('-'),
            '…' => out.push_str("..."),
            'ß' => out.push_str("ss"),
            'æ' => out.push_str("ae"),
            'Æ' => out.push_str("AE"),
            'œ' => out.push_str("oe"),
            'ł' => out.push('l'),
            'Ł' => out.push('L'),
            'đ' => out.push('d'),
            'Đ' => out.push('D'),
            ' '..='~' => out.push(c),
            c if c.is_whitespace() => out.push(' '),
            c => out.push(bare(c).unwrap_or('?')),
        }
    }
    out
}

/// The letter under an accent, for the Latin letters.
fn bare(c: char) -> Option<char> {
    const BARE: [(&str, char); 36] = [
        ("àáâãäåāăą", 'a'),
        ("ÀÁÂÃÄÅĀĂĄ", 'A'),
        ("çćčċ", 'c'),
        ("ÇĆČĊ", 'C'),
        ("ďð", 'd'),
        ("ĎÐ", 'D'),
        ("èéêëēėęě", 'e'),
        ("ÈÉÊËĒĖĘĚ", 'E'),
        ("ğģġ", 'g'),
        ("ĞĢĠ", 'G'),
        ("ħ", 'h'),
        ("Ħ", 'H'),
        ("ìíîïīįı", 'i'),
        ("ÌÍÎÏĪĮİ", 'I'),
        ("ķ", 'k'),
        ("Ķ", 'K'),
        ("ĺľļ", 'l'),
        ("ĹĽĻ", 'L'),
        ("ñńňņ", 'n'),
        ("ÑŃŇŅ", 'N'),
        ("òóôõöōő", 'o'),
        ("ÒÓÔÕÖŌŐ", 'O'),
        ("ŕř", 'r'),
        ("ŔŘ", 'R'),
        ("śšşș", 's'),
        ("ŚŠŞȘ", 'S'),
        ("ťţț", 't'),
        ("ŤŢȚ", 'T'),
        ("ùúûüūůűų", 'u'),
        ("ÙÚÛÜŪŮŰŲ", 'U'),
        ("ŵ", 'w'),
        ("ýÿŷ", 'y'),
        ("ÝŸŶ", 'Y'),
        ("źżž", 'z'),
        ("ŹŻŽ", 'Z'),
        ("þ", 'p'),
    ];
    BARE.iter().find(|(accented, _)| accented.contains(c)).map(|(_, letter)| *letter)
}

#[cfg(test)]
mod tests {
    use super::ascii;

    #[test]
    fn what_a_machine_reads_is_ascii() {
        assert_eq!(ascii("R\u{2009}1\u{2044}2\u{2033}, Ø 35 ± 1, 45°"), "R 1/2\", %%c 35 %%p 1, 45%%d");
        assert_eq!(ascii("Łódź façade – 5 % ×2"), "Lodz facade - 5 %%% x2");
        assert!(ascii("台").eq("?"));
    }
}
