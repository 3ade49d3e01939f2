//! Two small tables: one says which sentences an area has, the other says them in a language.

/// Makes the trait of an area: `name;` for fixed words, `name(count: usize);` for a sentence with parts in it.
macro_rules! area {
    ($(#[$doc:meta])* $area:ident { $($name:ident $(($($part:ident: $kind:ty),*))?;)* }) => {
        $(#[$doc])*
        // The names are sentences, not conversions: one may begin with "from".
        #[allow(clippy::wrong_self_convention)]
        pub trait $area: Sync {
            $($crate::sentences::ask! { $name $(($($part: $kind),*))? })*
        }
    };
}

macro_rules! ask {
    ($name:ident) => {
        #[doc = concat!("The words of `", stringify!($name), "`.")]
        fn $name(&self) -> &'static str;
    };
    ($name:ident ($($part:ident: $kind:ty),*)) => {
        #[doc = concat!("The sentence of `", stringify!($name), "`.")]
        fn $name(&self, $($part: $kind),*) -> String;
    };
}

/// Answers the trait of an area: `name: "words";` or `name(count: usize): format!("{count} events");`.
macro_rules! say {
    ($language:ident says $area:ident { $($name:ident $(($($part:ident: $kind:ty),*))? : $words:expr;)* }) => {
        impl $crate::area::$area for $language {
            $($crate::sentences::tell! { $name $(($($part: $kind),*))? : $words })*
        }
    };
}

macro_rules! tell {
    ($name:ident : $words:expr) => {
        fn $name(&self) -> &'static str {
            $words
        }
    };
    ($name:ident ($($part:ident: $kind:ty),*) : $words:expr) => {
        fn $name(&self, $($part: $kind),*) -> String {
            $words
        }
    };
}

pub(crate) use {area, ask, say, tell};
